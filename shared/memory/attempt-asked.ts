import type { KeptRecord } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { Attempt } from "./query.ts";
import { isAfter } from "./when.ts";
import { isCure } from "./work.ts";

const inTime =
  (hemisphere: Hemisphere) =>
  (one: KeptRecord, other: KeptRecord): number => {
    if (isAfter(one.fields.date, other.fields.date, hemisphere)) return 1;
    return isAfter(other.fields.date, one.fields.date, hemisphere) ? -1 : one.id - other.id;
  };

/** The try that is meant of all the work on a thing: care that is done over and over is none, where there is a cure. */
export const attemptAmong = (
  work: readonly KeptRecord[],
  attempt: Attempt,
  hemisphere: Hemisphere,
): KeptRecord | undefined => {
  const cures = work.filter(({ fields }) => isCure(fields.action));
  const tries = (cures.length > 1 ? cures : work).toSorted(inTime(hemisphere));
  if ("nth" in attempt) return tries[attempt.nth - 1];
  const { before } = attempt;
  const next = tries.findLastIndex(
    ({ fields }) => before.length === 0 || (fields.action !== null && before.includes(fields.action)),
  );
  return next < 1 ? undefined : tries[next - 1];
};
