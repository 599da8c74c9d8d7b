import { capital } from "../../shared/capital.ts";
import { sayDate } from "../../shared/edtf.ts";
import type { KeptRecord, RecordId } from "../../shared/history.ts";
import { CARE_ROWS, type CareDue, type CareRow } from "../../shared/outlook/index.ts";
import type { Button, LookAnswer } from "../conversation/buttons.ts";
import type { Reply, Turn } from "../conversation/turn.ts";
import { careAhead, keptChoices } from "../rig/care-choices.ts";
import { rowLine } from "./care.ts";
import { thingName } from "./record-line.ts";
import { doneWord, listed } from "./words.ts";

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

/** The last sentence of what was kept with a look: what to look for, without why now. */
const lookFor = (why: string): string => why.split("\n").at(-1) ?? "";

const fixLine = (turn: Turn, id: RecordId, answered: Answered, brief: boolean): Line[] => {
  const record = turn.store.history.record(id);
  if (record === undefined) return [];
  const said = answered.get(id);
  if (said !== undefined) return [{ text: said, buttons: null }];
  const look = turn.store.looks.of(id);
  if (answered.size > 0 && look?.nudgedAt == null)
    return [{ text: `${thingName(record.fields)}: answered.`, buttons: null }];
  const why = look?.why ?? "";
  const question = [workDone(turn, record), brief ? lookFor(why) : why].filter((words) => words !== "");
  return [{ text: question.join("\n"), buttons: lookButtons(id) }];
};

const careLine = (turn: Turn, id: CareRow["id"], due: readonly CareDue[], answered: Answered): Line[] => {
  const row = CARE_ROWS.find((each) => each.id === id);
  if (row === undefined) return [];
  const said = answered.get(id);
  if (said !== undefined) return [{ text: said, buttons: null }];
  const choice = keptChoices(turn.store).find((each) => each.row === id);
  if (answered.size > 0 && choice?.nudgedOn == null)
    return [{ text: `${rowLine(row)}: answered.`, buttons: null }];
  const care = due.find((each) => each.row.id === id);
  const why = care === undefined || care.reason === "never" ? "" : care.why;
  return [
    {
      text: [`Time to ${row.say}. ${why}`.trim(), row.look].join("\n"),
      buttons: careButtons(id),
    },
  ];
};

const ALL: readonly Button[] = [
  { label: "All still good", tap: { tap: "looks", answer: "holding" } },
  { label: "All later", tap: { tap: "looks", answer: "later" } },
];

type Asking = { readonly nudged: Nudged; readonly answered: Answered; readonly brief: boolean };

/** One thing has plain buttons; of several, each has a number and its row. */
const asking = (turn: Turn, { nudged, answered, brief }: Asking): Reply => {
  const { records, care } = nudged;
  const due = care.length === 0 ? [] : careAhead(turn);
  const lines = [
    ...records.flatMap((id) => fixLine(turn, id, answered, brief)),
    ...care.flatMap((id) => careLine(turn, id, due, answered)),
  ];
  const alone = lines.length === 1;
  const rows = lines.flatMap(({ buttons }, index) =>
    buttons === null ? [] : [buttons(alone ? null : index + 1)],
  );
  const numbered = lines.map(({ text }, index) => (alone ? text : `${index + 1}. ${text}`));
  return {
    text: numbered.join("\n\n"),
    buttons: rows.length > 1 && care.length === 0 ? [...rows, ALL] : rows,
  };
};

/** What is due, each with why now and what to look for. */
export const nudgeText = (turn: Turn, nudged: Nudged): Reply => {
  const { text, buttons } = asking(turn, { nudged, answered: new Map(), brief: false });
  const { records, care } = nudged;
  if (records.length === 0 && care.length === 1) return { text, buttons: buttons ?? [] };
  const head = records.length + care.length === 1 ? "Worth a look: " : "Worth a look:\n";
  return { text: `${head}${text}`, buttons: buttons ?? [] };
};

/** The same once something was answered: that stands as its answer, and the rest is asked in short. */
export const nudgeAnswered = (turn: Turn, nudged: Nudged, answered: Answered): Reply =>
  asking(turn, { nudged, answered, brief: true });

/** How some fixes have held, asked in short. */
export const lookList = (turn: Turn, records: readonly RecordId[]): Reply =>
  asking(turn, { nudged: { records, care: [] }, answered: new Map(), brief: true });
