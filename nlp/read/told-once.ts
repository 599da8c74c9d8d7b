import type { Draft } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";

const SAME = ["kind", "component", "action", "where", "date", "due"] as const;

/** Whether an account of a piece of work says nothing that the other does not say of the same. */
const addsNothing = (later: RecordFields, earlier: RecordFields): boolean =>
  SAME.every((field) => later[field] === earlier[field]) &&
  (later.outcome === earlier.outcome || later.outcome === "untested") &&
  (later.cost === null || later.cost === earlier.cost) &&
  later.exposure.length === 0 &&
  later.materials.every((each) => earlier.materials.includes(each));

/** The drafts without those that only tell again what one before tells: "the smoke alarm ..., both went off". */
export const toldOnce = (drafts: readonly Draft[]): readonly Draft[] =>
  drafts.filter(
    ({ fields }, at) => !drafts.slice(0, at).some((earlier) => addsNothing(fields, earlier.fields)),
  );
