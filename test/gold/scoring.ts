import { daySpan } from "../../shared/edtf.ts";
import type { KeptRecord } from "../../shared/history.ts";
import { compareMaterials } from "../../shared/memory/materials.ts";
import type { RecordFields } from "../../shared/record.ts";
import type { TurnResult } from "./conversation.ts";

type Expected = Partial<Record<keyof RecordFields, unknown>> & {
  readonly components?: readonly string[];
  readonly count?: number;
  readonly cost?: number;
  readonly verdict?: "yes" | "no";
};
export type Turn = {
  readonly at: string;
  readonly text: string;
  readonly expect?: {
    readonly records?: number;
    readonly fixed?: Expected;
    readonly removed?: true;
    readonly answer?: Expected;
  };
};
export type Talk = {
  readonly id: string;
  readonly zone: string;
  readonly hemisphere: "north" | "south";
  readonly turns: readonly Turn[];
};

const sameDate = (one: unknown, other: unknown): boolean => {
  if (typeof one !== "string" || typeof other !== "string") return one === other;
  const [a, b] = [daySpan(one, "north"), daySpan(other, "north")];
  return a !== undefined && b !== undefined ? a.from.equals(b.from) && a.to.equals(b.to) : one === other;
};

const sameMaterials = (wanted: readonly string[], got: readonly string[]): boolean =>
  wanted.length === got.length &&
  wanted.every((material) => got.some((other) => compareMaterials([material], [other]) === "same"));

const FIELDS = ["kind", "component", "action", "outcome"] as const;

const meets = (record: KeptRecord | undefined, wanted: Expected): boolean => {
  const fields = record?.fields;
  const plain = FIELDS.every((field) => wanted[field] === undefined || fields?.[field] === wanted[field]);
  const date = wanted.date === undefined || sameDate(wanted.date, fields?.date);
  const stuff =
    wanted.materials === undefined || sameMaterials(wanted.materials as string[], fields?.materials ?? []);
  return plain && date && stuff;
};

const isAnswered = (result: TurnResult, wanted: Expected): boolean => {
  const { answer } = result;
  if (answer === null) return false;
  const things = [...new Set(answer.records.map((record) => record.fields.component))].sort().join();
  return (
    meets(answer.records[0], wanted) &&
    (wanted.count === undefined || answer.count === wanted.count) &&
    (wanted.cost === undefined || answer.cost === wanted.cost) &&
    (wanted.verdict === undefined || answer.verdict === wanted.verdict) &&
    (wanted.components === undefined || [...wanted.components].sort().join() === things)
  );
};

type Expectation = NonNullable<Turn["expect"]>;

const isFixed = (live: readonly KeptRecord[], wanted: Expected): boolean =>
  live.some(
    (record) => meets(record, wanted) && (wanted.cost === undefined || record.fields.cost === wanted.cost),
  );

/** Whether a turn did what was expected of it, by the rule of the gold conversations. */
export const isRight = (result: TurnResult, expect: Expectation): boolean => {
  const live = result.records.filter((record) => !record.removed);
  if (expect.records !== undefined) return result.made === expect.records && live.length >= expect.records;
  if (expect.answer !== undefined) return isAnswered(result, expect.answer);
  return expect.removed === true
    ? result.records.some((record) => record.removed)
    : isFixed(live, expect.fixed ?? {});
};
