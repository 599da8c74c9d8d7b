import { sayDate } from "../../shared/edtf.ts";
import type { KeptRecord, RecordId } from "../../shared/history.ts";
import type { Button, LookAnswer } from "../conversation/buttons.ts";
import type { Reply, Turn } from "../conversation/turn.ts";
import { thingName } from "./record-line.ts";
import { capital, doneWord, listed } from "./words.ts";

const LABELS: readonly (readonly [answer: LookAnswer, alone: string, numbered: string])[] = [
  ["holding", "Still good", "good"],
  ["partly", "Partly", "partly"],
  ["failed", "Came back", "came back"],
  ["later", "Later", "later"],
];

const workDone = (turn: Turn, { fields }: KeptRecord): string => {
  const materials = fields.materials.length === 0 ? "" : ` with ${listed(fields.materials)}`;
  const date = fields.date === null ? "" : `, ${sayDate(fields.date, turn.today)}`;
  return `${thingName(fields)}: ${doneWord(fields.action)}${materials}${date}.`;
};

const question = (turn: Turn, record: KeptRecord): string => {
  const why = turn.store.looks.of(record.id)?.why ?? "";
  return [workDone(turn, record), why].filter((words) => words !== "").join(" ");
};

const buttonsFor = (record: RecordId, number: number | null): readonly Button[] =>
  LABELS.map(([answer, alone, short]) => ({
    label: number === null ? alone : `${number} ${short}`,
    tap: { tap: "look", record, answer },
  }));

const NO_ANSWERS: ReadonlyMap<RecordId, string> = new Map();

/**
 * The looks that are due, each with why now and what to look for; what was answered already stands as its answer.
 * One look has four plain buttons; of several, each has its row.
 */
export const nudgeText = (
  turn: Turn,
  ids: readonly RecordId[],
  answers: ReadonlyMap<RecordId, string> = NO_ANSWERS,
): Reply => {
  const records = ids.flatMap((id) => turn.store.history.record(id) ?? []);
  const waits = (id: RecordId): boolean => !answers.has(id) && turn.store.looks.of(id)?.nudgedAt !== null;
  const isNew = answers.size === 0;
  const asked = (id: RecordId): boolean => isNew || waits(id);
  const lines = records.map(
    (record) =>
      answers.get(record.id) ??
      (asked(record.id) ? question(turn, record) : `${thingName(record.fields)}: answered.`),
  );
  const alone = records.length === 1;
  const head = alone ? "Worth a look: " : "Worth a look:\n";
  const body = alone ? (lines[0] ?? "") : lines.map((line, index) => `${index + 1}. ${line}`).join("\n");
  const rows = records.flatMap(({ id }, index) =>
    asked(id) ? [buttonsFor(id, alone ? null : index + 1)] : [],
  );
  const all: readonly Button[] = [
    { label: "All still good", tap: { tap: "looks", answer: "holding" } },
    { label: "All later", tap: { tap: "looks", answer: "later" } },
  ];
  return {
    text: answers.size > 0 && alone ? capital(body) : `${head}${body}`,
    buttons: rows.length > 1 ? [...rows, all] : rows,
  };
};
