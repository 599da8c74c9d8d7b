import type { Draft, Evidence, Span } from "../../shared/reading.ts";
import type { Edtf, Field, RecordFields } from "../../shared/record.ts";
import type { Action, Kind, Outcome } from "../../shared/vocabulary.ts";
import { sureOf } from "./certainty.ts";
import type { Clause } from "./clauses.ts";
import type { Dated } from "./dates.ts";
import type { Deed } from "./deed.ts";
import { doneBy } from "./done-by.ts";
import type { Due } from "./due.ts";
import type { Exposed } from "./exposures.ts";
import type { Judged } from "./outcome.ts";
import type { Scan, Stretch } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { troubleWords } from "./trouble-words.ts";
import type { Used } from "./uses.ts";
import { wordsOf } from "./where.ts";
import { listed } from "./words.ts";

/** A record in the making: every field with the stretch and the rule that gave it. */
export type Made = {
  readonly kind: Kind;
  readonly told: Told;
  readonly event: Event | null;
  readonly action: Action | null;
  readonly dated: Dated | undefined;
  readonly judged: Judged | null;
  readonly used: Used;
  readonly where: Stretch | undefined;
  readonly exposure: readonly Exposed[];
  readonly cost: { readonly value: number; readonly at: Stretch } | null;
  readonly fault: Stretch | null;
  readonly due: Due | null;
  readonly span: Stretch;
  /** How sure the judges are of some fields, from 0 to 1. */
  readonly sure: Partial<Readonly<Record<Field, number>>>;
};

/** The deed that a record is mainly about, if it tells one. */
export const mainDeed = ({ event }: Made): Deed | undefined =>
  event?.deeds.find((deed) => deed.sense !== "prep") ?? event?.deeds[0];

export const NOTHING_USED: Used = { names: [], refs: [], brands: [] };

const spanOf = (scan: Scan, { from, to }: Stretch): Span => ({
  start: scan.tokens[from]?.start ?? 0,
  end: scan.tokens[Math.max(from, to - 1)]?.end ?? 0,
});

const deedRule = (made: Made): string =>
  (made.event?.deeds ?? []).map((deed) => `${deed.sense}:${deed.source}`).join(", ");

const namedRule = ({ told: { topic } }: Made): string => {
  if (topic.mentions.every((ref) => ref.weak)) return "named-weakly";
  return topic.mentions.length > 1 ? "named-again" : "named";
};

const claims = (made: Made): readonly [Field, readonly Stretch[], string][] => [
  ["kind", [made.span], made.event === null ? `${made.kind} without deed` : `${made.kind} by deed`],
  ["component", made.told.topic.mentions, namedRule(made)],
  ["action", made.event?.deeds ?? [], deedRule(made)],
  ["outcome", made.judged?.spans ?? [], made.judged?.rule ?? ""],
  ["date", made.dated?.spans ?? [], made.dated?.rule ?? ""],
  ["materials", made.used.refs, made.used.names.length > 0 ? "put-in-or-on" : ""],
  ["where", made.where === undefined ? [] : [made.where], made.where === undefined ? "" : "place"],
  ["cost", made.cost === null ? [] : [made.cost.at], made.cost === null ? "" : "money"],
  ["exposure", made.exposure.map((each) => each.at), made.exposure.length > 0 ? "use-since" : ""],
  ["fault", made.fault === null ? [] : [made.fault], made.fault === null ? "" : "fault-words"],
  ["due", made.due === null ? [] : [made.due.at], made.due === null ? "" : "due"],
];

const evidenceOf = (made: Made, scan: Scan): Partial<Record<Field, Evidence>> =>
  Object.fromEntries(
    claims(made)
      .filter(([, , rule]) => rule !== "")
      .map(([field, spans, rule]) => [
        field,
        {
          spans: spans.map((each) => spanOf(scan, each)),
          sure: made.sure[field] ?? sureOf(field, rule),
          rule,
        },
      ]),
  );

const dateOf = (made: Made): Edtf | null => (made.kind === "todo" ? null : (made.dated?.edtf ?? null));
const outcomeOf = (made: Made): Outcome | null =>
  made.kind === "repair" || made.kind === "check" ? (made.judged?.outcome ?? "untested") : null;

const SIDE_OF = listed("whereSideOf");
const OF = /^of (?:the |my |our )?(?=\S)/;

/** "Both sides of the front axle", "of the front axle": where it is, with the side that stands before it, else without what ties it to the thing. */
const whereOf = (scan: Scan, { from, to }: Stretch): string => {
  let start = from;
  if (scan.tokens[from]?.norm === "of") while (SIDE_OF.has(scan.tokens[start - 1]?.norm ?? "")) start--;
  const words = wordsOf(scan, { from: start, to }).toLowerCase();
  return start < from ? words : words.replace(OF, "");
};

const fieldsOf = (made: Made, scan: Scan, clauses: readonly Clause[]): RecordFields => ({
  kind: made.kind,
  component: made.told.topic.component,
  where: made.where === undefined ? null : whereOf(scan, made.where),
  action: made.action,
  materials: [...made.used.names],
  date: dateOf(made),
  outcome: outcomeOf(made),
  exposure: made.exposure.map((each) => each.value),
  cost: made.cost?.value ?? null,
  fault: made.fault === null ? null : wordsOf(scan, troubleWords(scan, clauses, made.fault)),
  due: made.due?.text ?? null,
});

/** The draft that a record in the making comes to. */
export const draftOf = (made: Made, scan: Scan, clauses: readonly Clause[]): Draft => ({
  fields: fieldsOf(made, scan, clauses),
  evidence: evidenceOf(made, scan),
  span: spanOf(scan, made.span),
  brands: made.used.brands,
  doneBy: made.kind === "repair" && made.event !== null ? doneBy(made.event, scan, clauses) : null,
});
