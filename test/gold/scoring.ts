import { daySpan } from "../../shared/edtf.ts";
import { compareMaterials } from "../../shared/memory/materials.ts";
import { plainWords, shareAny } from "../../shared/memory/words.ts";
import type { Played, PrintedRecord } from "./play.ts";
import type { Expectation, Expected } from "./talk.ts";

const sameDate = (one: unknown, other: unknown): boolean => {
  if (typeof one !== "string" || typeof other !== "string") return one === other;
  const [a, b] = [daySpan(one, "north"), daySpan(other, "north")];
  return a !== undefined && b !== undefined ? a.from.equals(b.from) && a.to.equals(b.to) : one === other;
};

const sameMaterials = (wanted: readonly string[], got: readonly string[]): boolean =>
  wanted.length === got.length &&
  wanted.every((material) => got.some((other) => compareMaterials([material], [other]) === "same"));

const sameWhere = (wanted: unknown, got: string | null | undefined): boolean =>
  typeof wanted !== "string" || got == null
    ? wanted === got
    : shareAny(plainWords(wanted), new Set(plainWords(got)));

const FIELDS = ["kind", "component", "action", "outcome"] as const;

const meets = (record: PrintedRecord | undefined, wanted: Expected): boolean => {
  const plain = FIELDS.every((field) => wanted[field] === undefined || record?.[field] === wanted[field]);
  const date = wanted.date === undefined || sameDate(wanted.date, record?.date);
  const stuff =
    wanted.materials === undefined || sameMaterials(wanted.materials as string[], record?.materials ?? []);
  return plain && date && stuff;
};

const isAnswered = ({ answer, answered }: Played, wanted: Expected): boolean => {
  if (answer === null) return false;
  const things = [...new Set(answered.map(({ component }) => component))].sort().join();
  return (
    meets(answered[0], wanted) &&
    (wanted.count === undefined || answer.count === wanted.count) &&
    (wanted.cost === undefined || answer.cost === wanted.cost) &&
    (wanted.verdict === undefined || answer.verdict === wanted.verdict) &&
    (wanted.components === undefined || [...wanted.components].sort().join() === things)
  );
};

const isFixed = (record: PrintedRecord, wanted: Expected): boolean =>
  record.removed !== true &&
  meets(record, wanted) &&
  (wanted.cost === undefined || record.cost === wanted.cost) &&
  (wanted.where === undefined || sameWhere(wanted.where, record.where));

export type Sort = "note" | "answer" | "correction" | "removal";

export const sortOf = (expect: Expectation): Sort => {
  if (expect.records !== undefined) return "note";
  if (expect.answer !== undefined) return "answer";
  return expect.removed === true ? "removal" : "correction";
};

/** Whether a turn did what was expected of it, by the rule of the gold conversations. */
export const isRight = (played: Played, expect: Expectation): boolean => {
  if (expect.records !== undefined) return played.made === expect.records;
  if (expect.answer !== undefined) return isAnswered(played, expect.answer);
  if (expect.removed === true) return played.records.some(({ removed }) => removed === true);
  const { fixed = {} } = expect;
  return played.records.some((record) => isFixed(record, fixed));
};
