import type { KeptRecord, Verdict } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { Exposure } from "../record.ts";
import { ageBetween, mixedAge } from "./age.ts";
import { type Day, dayOfInstant, daysOf } from "./days.ts";
import { wornOf } from "./units.ts";
import type { Use } from "./use.ts";
import type { Wear } from "./wear.ts";

/** A look at the fix that was answered. */
export type Seen = {
  readonly day: Day;
  /** Age of the fix then, in days at the typical pace. */
  readonly age: number;
  readonly outcome: Verdict["outcome"];
  /** The age is a lifetime that was told ("held for two trips"), not the time of the look. */
  readonly told: boolean;
};

export type Setting = { readonly use: Use; readonly hemisphere: Hemisphere };

/** The verdicts that were kept; a verdict given with the record itself counts on the day it was told. */
export const verdictsOf = ({ fields, verdicts, saidAt, noteId }: KeptRecord): readonly Verdict[] => {
  if (verdicts.length > 0 || fields.outcome === null || fields.outcome === "untested") return verdicts;
  return [{ outcome: fields.outcome, when: saidAt.slice(0, 10), saidAt, exposure: fields.exposure, noteId }];
};

const exposedAge = (
  wear: Wear,
  exposure: readonly Exposure[],
  calendarDays: number,
  useDays: number,
): number => {
  const usePerDay = calendarDays > 0 ? useDays / calendarDays : 1;
  let [calendar, use] = [calendarDays, useDays];
  for (const amount of exposure) {
    const worn = wornOf(amount);
    if ("useDays" in worn) {
      if (wear.axis !== "calendar") use = worn.useDays;
    } else [calendar, use] = [worn.calendarDays, worn.calendarDays * usePerDay];
  }
  return mixedAge(wear, calendar, use);
};

export const seenOf = (verdict: Verdict, start: Day, wear: Wear, { use, hemisphere }: Setting): Seen => {
  const said = dayOfInstant(verdict.saidAt);
  const span = daysOf(verdict.when, hemisphere);
  const day = Math.max(
    start,
    span === undefined ? said : Math.min(Math.floor((span[0] + span[1]) / 2), said),
  );
  const counted = ageBetween(wear, use, start, day);
  const useDays = wear.useShare === 0 ? 0 : (counted - (1 - wear.useShare) * (day - start)) / wear.useShare;
  const exposed = verdict.exposure.length > 0;
  const age = exposed ? exposedAge(wear, verdict.exposure, day - start, useDays) : counted;
  return { day, age, outcome: verdict.outcome, told: exposed };
};
