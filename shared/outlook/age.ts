import type { Day } from "./days.ts";
import type { Use } from "./use.ts";
import { TYPICAL_PER_DAY, type Wear } from "./wear.ts";

/**
 * Age in days at the typical pace: a mix of calendar and of use on the axis that wears the component (a combined time
 * scale in the sense of Kordonsky and Gertsbakh, from memory). At the typical pace it is the calendar.
 */
export const ageBetween = (wear: Wear, use: Use, from: Day, to: Day): number => {
  if (wear.axis === "calendar") return to - from;
  const useDays = use.between(wear.axis, from, to) / TYPICAL_PER_DAY[wear.axis];
  return mixedAge(wear, to - from, useDays);
};

export const mixedAge = ({ useShare }: Wear, calendarDays: number, useDays: number): number =>
  (1 - useShare) * calendarDays + useShare * useDays;

/** Days of ageing that a calendar day brings, at the pace of use known on a day (by default today). */
export const ageingPace = (wear: Wear, use: Use, on: Day = use.today): number =>
  wear.axis === "calendar" ? 1 : mixedAge(wear, 1, use.perDay(wear.axis, on) / TYPICAL_PER_DAY[wear.axis]);
