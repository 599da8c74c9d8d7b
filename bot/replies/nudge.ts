import { sayDate } from "../../shared/edtf.ts";
import type { KeptRecord, RecordId } from "../../shared/history.ts";
import { CARE_ROWS, type CareDue, type CareRow } from "../../shared/outlook/index.ts";
import type { Button, LookAnswer } from "../conversation/buttons.ts";
import type { Reply, Turn } from "../conversation/turn.ts";
import { careAhead, keptChoices } from "../rig/care-choices.ts";
import { rowLine } from "./care.ts";
import { thingName } from "./record-line.ts";
import { capital, doneWord, listed } from "./words.ts";

/** What one message asks about: fixes and rows of standing care. */
export type Nudged = { readonly records: readonly RecordId[]; readonly care: readonly CareRow["id"][] };

/** The lines that answers have put in the place of questions, by fix or row. */
export type Answered = ReadonlyMap<RecordId | CareRow["id"], string>;

type Line = {
  readonly text: string;
  readonly buttons: ((number: number | null) => readonly Button[]) | null;
};

const LOOK_LABELS: readonly (readonly [answer: LookAnswer, alone: string, numbered: string])[] = [
  ["holding", "Still good", "good"],
  ["partly", "Partly", "partly"],
  ["failed", "Came back", "failed"],
  ["later", "Later", "later"],
];

const lookButtons =
  (record: RecordId) =>
  (number: number | null): readonly Button[] =>
    LOOK_LABELS.map(([answer, alone, short]) => ({
      label: number === null ? alone : `${number} ${short}`,
      tap: { tap: "look", record, answer },
    }));

const careButtons =
  (row: CareRow["id"]) =>
  (number: number | null): readonly Button[] =>
    (["done", "later"] as const).map((answer) => ({
      label: number === null ? capital(answer) : `${number} ${answer}`,
      tap: { tap: "seen", row, answer },
    }));

const workDone = (turn: Turn, { fields }: KeptRecord): string => {
  const materials = fields.materials.length === 0 ? "" : ` with ${listed(fields.materials)}`;
  const date = fields.date === null ? "" : `, ${sayDate(fields.date, turn.today, turn.rig.hemisphere)}`;
  return `${thingName(fields)}: ${doneWord(fields.action)}${materials}${date}.`;
};

const fixLine = (turn: Turn, id: RecordId, answered: Answered): Line[] => {
  const record = turn.store.history.record(id);
  if (record === undefined) return [];
  const said = answered.get(id);
  if (said !== undefined) return [{ text: said, buttons: null }];
  const look = turn.store.looks.of(id);
  if (answered.size > 0 && look?.nudgedAt == null)
    return [{ text: `${thingName(record.fields)}: answered.`, buttons: null }];
  const question = [workDone(turn, record), look?.why ?? ""].filter((words) => words !== "").join("\n");
  return [{ text: question, buttons: lookButtons(id) }];
};

const careLine = (turn: Turn, id: CareRow["id"], due: readonly CareDue[], answered: Answered): Line[] => {
  const row = CARE_ROWS.find((each) => each.id === id);
  if (row === undefined) return [];
  const said = answered.get(id);
  if (said !== undefined) return [{ text: said, buttons: null }];
  const choice = keptChoices(turn.store).find((each) => each.row === id);
  if (answered.size > 0 && choice?.nudgedOn == null)
    return [{ text: `${rowLine(row)}: answered.`, buttons: null }];
  const why = due.find((each) => each.row.id === id)?.why ?? "";
  return [
    {
      text: [`${rowLine(row)}.`, why, row.look].filter((words) => words !== "").join("\n"),
      buttons: careButtons(id),
    },
  ];
};

const ALL: readonly Button[] = [
  { label: "All still good", tap: { tap: "looks", answer: "holding" } },
  { label: "All later", tap: { tap: "looks", answer: "later" } },
];

/**
 * What is due, each with why now and what to look for; what was answered already stands as its answer. One thing has
 * plain buttons; of several, each has its row.
 */
export const nudgeText = (turn: Turn, { records, care }: Nudged, answered: Answered = new Map()): Reply => {
  const due = care.length === 0 ? [] : careAhead(turn);
  const lines = [
    ...records.flatMap((id) => fixLine(turn, id, answered)),
    ...care.flatMap((id) => careLine(turn, id, due, answered)),
  ];
  const alone = lines.length === 1;
  const rows = lines.flatMap(({ buttons }, index) =>
    buttons === null ? [] : [buttons(alone ? null : index + 1)],
  );
  const body = alone
    ? (lines[0]?.text ?? "")
    : lines.map(({ text }, index) => `${index + 1}. ${text}`).join("\n\n");
  const head = alone && answered.size > 0 ? "" : alone ? "Worth a look: " : "Worth a look:\n";
  return { text: `${head}${body}`, buttons: rows.length > 1 && care.length === 0 ? [...rows, ALL] : rows };
};
