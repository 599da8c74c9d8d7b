import { capital } from "../../shared/capital.ts";
import { sayDate } from "../../shared/edtf.ts";
import type { RecordId } from "../../shared/history.ts";
import type { Amend, Amendment } from "../../shared/memory/amendment.ts";
import type { Field, RecordFields } from "../../shared/record.ts";
import { componentName } from "../../shared/vocabulary.ts";
import type { Button } from "../conversation/buttons.ts";
import type { Reply, Turn } from "../conversation/turn.ts";
import { sayMoney } from "../rig/money.ts";
import { lineContext, recordLine, thingName } from "./record-line.ts";
import { byWhom } from "./who.ts";
import { doneWord, listed, sayCount, sayExposure } from "./words.ts";

type Why = Extract<Amendment, { is: "impossible" }>["why"];

export const IMPOSSIBLE: Record<Why, string> = {
  "nothing-said-yet": "There is nothing to put right yet. Tell me what you did first.",
  "no-such-number":
    "I don't see that number in what I showed last. Say the part instead, like “the gray tank one”.",
  "not-found": "I can't tell which record you mean. Name the part, like “the gray tank patch was in May”.",
  "already-so": "That is how I have it already.",
  "in-the-future": "That day is still to come, so I left the date as it was. When was it?",
  contradictory: "Those two don't go together, so I changed nothing. Which one is it?",
  "nothing-to-join": "That stands here once; I have no second record of it to put it with.",
  "already-removed": "That one is taken away already.",
};

const FIELD_NAME: Record<Field, string> = {
  kind: "kind",
  component: "part",
  where: "place",
  action: "work",
  materials: "material",
  date: "date",
  outcome: "verdict",
  exposure: "use since",
  cost: "cost",
  fault: "trouble",
  due: "due",
};

const OUTCOME = {
  holding: "holding",
  partly: "better, not right",
  failed: "did not hold",
  untested: "no word yet",
} as const;

const KIND = { repair: "work done", check: "a look", fault: "a fault", todo: "a thing to do" } as const;

const valueWords = (turn: Turn, field: Field, value: RecordFields[Field]): string => {
  const fields = { [field]: value } as Partial<RecordFields>;
  if (value === null || (Array.isArray(value) && value.length === 0)) return "nothing";
  if (fields.component !== undefined) return componentName(fields.component);
  if (fields.kind !== undefined) return KIND[fields.kind];
  if (fields.action != null) return doneWord(fields.action);
  if (fields.outcome != null) return OUTCOME[fields.outcome];
  if (fields.date != null) return sayDate(fields.date, turn.today, turn.rig.hemisphere);
  if (fields.cost != null) return sayMoney(fields.cost, turn.rig.zone);
  if (fields.materials !== undefined) return listed(fields.materials);
  if (fields.exposure !== undefined) return listed(fields.exposure.map(sayExposure));
  return typeof value === "string" ? value : "";
};

const usageWords = (change: Extract<Amend, { do: "use" }>): string => {
  const { to } = change;
  return "reading" in to ? `meter at ${sayCount(to.reading)} ${to.unit}` : sayExposure(to);
};

const changeWords = (turn: Turn, change: Amend): string => {
  switch (change.do) {
    case "set":
      return `${FIELD_NAME[change.field]}: ${valueWords(turn, change.field, change.from)} → ${valueWords(turn, change.field, change.to)}`;
    case "done-by":
      return change.to === null ? "done by you" : `done by ${byWhom(change.to)}`;
    case "remove":
      return "taken away";
    case "part":
      return "kept as two things";
    case "join":
      return "put together with the earlier record";
    case "use":
      return `use is ${usageWords(change)} now`;
    case "remove-use":
      return "logged use taken away";
  }
};

const lines = (turn: Turn, records: readonly RecordId[]): string[] =>
  records
    .flatMap((id) => turn.store.history.record(id) ?? [])
    .filter(({ removed }) => !removed)
    .map((record) => recordLine(record, lineContext(turn)));

const said = (turn: Turn, changes: readonly Amend[]): string =>
  listed([...new Set(changes.map((change) => changeWords(turn, change)))]);

/** What changed: once where it is the same for all records, else for each by its name. */
const whatChanged = (turn: Turn, changes: readonly Amend[], records: readonly RecordId[]): string[] => {
  const each = records.map((id) => ({
    id,
    words: said(
      turn,
      changes.filter((change) => "record" in change && change.record === id),
    ),
  }));
  const apart = new Set(each.map(({ words }) => words)).size > 1 && each.every(({ words }) => words !== "");
  if (!apart) return [`${capital(said(turn, changes))}.`];
  const told = each.map(({ id, words }) => {
    const record = turn.store.history.record(id);
    return `${record === undefined ? "" : `${thingName(record.fields)}, `}${words}.`;
  });
  return [...told, ""];
};

/** What changed, then the records as they stand. */
export const amendedReply = (turn: Turn, changes: readonly Amend[], records: readonly RecordId[]): Reply => {
  return {
    text: [...whatChanged(turn, changes, records), ...lines(turn, records)].join("\n"),
    buttons: [[{ label: "Undo", tap: { tap: "undo", turn: turn.turnId } }]],
    shows: {
      of: "note",
      records: [...records],
      usage: changes.flatMap((change) => (change.do === "use" ? [change.entry.id] : [])),
    },
  };
};

const pickLabel = (turn: Turn, id: RecordId, index: number): string => {
  const record = turn.store.history.record(id);
  return record === undefined ? `Number ${index + 1}` : thingName(record.fields);
};

/** Asks which record a correction is about; a tap or a word settles it. */
export const whichReply = (turn: Turn, candidates: readonly RecordId[]): Reply => {
  const shown = candidates.slice(0, 5);
  const list = lines(turn, shown).map((line, index) => `${index + 1}. ${line}`);
  const buttons = shown.map((record, index): readonly Button[] => [
    { label: pickLabel(turn, record, index), tap: { tap: "pick", record } },
  ]);
  return { text: ["Which one do you mean?", ...list].join("\n"), buttons };
};
