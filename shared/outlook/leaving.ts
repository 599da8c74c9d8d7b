import { Temporal } from "temporal-polyfill";
import { capital } from "../capital.ts";
import type { KeptRecord, RecordId } from "../history.ts";
import { type Consequence, componentName, consequenceOf } from "../vocabulary.ts";
import type { CareDue, CareReason } from "./care-choice.ts";
import { CARE_ROWS, type CareRow } from "./care-table.ts";
import type { Outlook } from "./outlook.ts";
import { chanceWords } from "./say.ts";
import type { Settings } from "./settings.ts";
import type { Trip } from "./use.ts";

/** One thing to see to before a trip. */
export type LeavingItem = {
  /** The same for the same thing whenever the list is made again, so that ticks stay. */
  readonly key: string;
  readonly what: "open" | "todo" | "buy" | "may-fail" | "look" | "care";
  readonly record: RecordId | null;
  readonly row: CareRow["id"] | null;
  readonly consequence: Consequence;
  /** Higher is worse; only the order means something. */
  readonly weight: number;
  readonly text: string;
  /** What it is about, in a few words, for when it is seen to. */
  readonly short: string;
};

export type LeavingInput = {
  readonly records: readonly KeptRecord[];
  readonly outlooks: readonly Outlook[];
  readonly care: readonly CareDue[];
  readonly trip: Trip;
  readonly settings: Settings;
  /** Keys of the lines that were seen to; they stay on the list until the trip is over. */
  readonly ticked: ReadonlySet<string>;
};

const HARM: Record<Consequence, number> = { safety: 100, water: 30, use: 15, comfort: 3 };

const thing = ({ fields }: KeptRecord): string =>
  capital(componentName(fields.component)) + (fields.where === null ? "" : `, ${fields.where}`);

const keyOf = ({ id }: KeptRecord): string => `record:${id}`;

const OPEN_KINDS = new Set(["fault", "todo"]);

const isOpen = ({ fields, closedBy, settled, removed }: KeptRecord): boolean =>
  !removed && !settled && closedBy === null && OPEN_KINDS.has(fields.kind);

/** A failed fix that nothing has taken over from is trouble too. */
const hasFailed = ({ fields, closedBy, settled, removed }: KeptRecord): boolean =>
  !removed && !settled && closedBy === null && fields.kind === "repair" && fields.outcome === "failed";

const isListed = (record: KeptRecord, ticked: ReadonlySet<string>): boolean =>
  isOpen(record) ||
  hasFailed(record) ||
  (ticked.has(keyOf(record)) && OPEN_KINDS.has(record.fields.kind) && !record.removed);

const BUYING = new Set(["replace", "install"]);

const openItem = (record: KeptRecord): LeavingItem => {
  const { fields } = record;
  const consequence = consequenceOf(fields.component);
  const what =
    fields.kind !== "todo" ? "open" : fields.action !== null && BUYING.has(fields.action) ? "buy" : "todo";
  const trouble = fields.fault === null ? "" : `: ${fields.fault}`;
  const goods = fields.materials.length === 0 ? "" : ` (${fields.materials.join(", ")})`;
  const text = {
    open: `${thing(record)}${trouble || ": not put right yet"}.`,
    todo: `${thing(record)}${trouble || ": still to do"}${goods}.`,
    buy: `${thing(record)}${trouble}: a new one to get${goods}.`,
  }[what];
  const share = { open: 1, todo: 0.4, buy: 0.5 }[what];
  return {
    key: keyOf(record),
    what,
    record: record.id,
    row: null,
    consequence,
    weight: HARM[consequence] * share,
    text,
    short: `${thing(record)}${trouble}.`,
  };
};

const onOrBefore = (day: Temporal.PlainDate, limit: Temporal.PlainDate) =>
  Temporal.PlainDate.compare(day, limit) <= 0;

const fixItem = (
  record: KeptRecord,
  outlook: Outlook,
  { trip, settings }: LeavingInput,
): LeavingItem | undefined => {
  const fails = 1 - outlook.lasts(trip);
  const mayFail = fails > settings.tripChance[outlook.consequence];
  const due = onOrBefore(outlook.nextLook.day, trip.to);
  if (!mayFail && !due) return undefined;
  const odds = `${chanceWords(fails)} that it won't last the trip`;
  const text = mayFail
    ? `${thing(record)}: ${odds}; look before you go.`
    : `${thing(record)}: due for a look before or on the trip (${odds}).`;
  const weight = HARM[outlook.consequence] * (mayFail ? 0.4 + 0.6 * fails : 0.1 + 0.6 * fails);
  const base = {
    key: keyOf(record),
    record: record.id,
    row: null,
    consequence: outlook.consequence,
    weight,
    text,
    short: `${thing(record)}.`,
  };
  return { ...base, what: mayFail ? "may-fail" : "look" };
};

/** How much an undone piece of care weighs against an open fault of the same consequence. */
const CARE_SHARE: Record<CareReason, number> = {
  work: 0.4,
  event: 0.4,
  trip: 0.2,
  time: 0.25,
  use: 0.25,
  season: 0.15,
  never: 0.12,
};

/** Care that comes round so often goes on on the road. */
const ON_THE_ROAD_DAYS = 60;

const careKey = (id: CareRow["id"]): string => `care:${id}`;

const careBase = (row: CareRow) => {
  const short = `${capital(row.say)}.`;
  const { consequence } = row;
  return {
    key: careKey(row.id),
    what: "care",
    record: null,
    row: row.id,
    consequence,
    text: short,
    short,
  } as const;
};

const careItem = (care: CareDue, { trip, ticked }: LeavingInput): LeavingItem | undefined => {
  const { row, due } = care;
  const base = careBase(row);
  const often = (row.every.days ?? Number.POSITIVE_INFINITY) < ON_THE_ROAD_DAYS;
  if (!ticked.has(base.key) && !onOrBefore(due, often ? trip.from : trip.to)) return undefined;
  const weight = HARM[row.consequence] * CARE_SHARE[care.reason];
  return { ...base, weight, text: `${base.short} ${care.why}` };
};

/** Care that was seen to, and so is not due any more, stays on the list. */
const seenToItems = ({ care, ticked }: LeavingInput): LeavingItem[] =>
  CARE_ROWS.filter(({ id }) => ticked.has(careKey(id)) && !care.some(({ row }) => row.id === id)).map(
    (row) => ({ ...careBase(row), weight: HARM[row.consequence] * CARE_SHARE.trip }),
  );

/** What is open, may fail, falls due or is to be bought before a trip, worst first. */
export const leavingList = (input: LeavingInput): readonly LeavingItem[] => {
  const byId = new Map(input.records.map((record) => [record.id, record]));
  const open = input.records.filter((record) => isListed(record, input.ticked)).map(openItem);
  const fixes = input.outlooks.flatMap((outlook) => {
    const record = byId.get(outlook.record);
    return (record && fixItem(record, outlook, input)) ?? [];
  });
  const care = input.care.flatMap((one) => careItem(one, input) ?? []);
  return [...open, ...fixes, ...care, ...seenToItems(input)].toSorted((a, b) => b.weight - a.weight);
};
