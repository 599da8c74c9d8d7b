import type { KeptUsage } from "../../../../shared/history.ts";
import { type Day, dateOf } from "../../../../shared/outlook/days.ts";
import { TYPICAL_PER_DAY, USE_AXES, type UseAxis, type Wear } from "../../../../shared/outlook/wear.ts";
import type { Random } from "./random.ts";

/** The use of one rig, day by day, and the meter readings that its keeper gives each month. */
export type RigUse = {
  readonly log: readonly KeptUsage[];
  /** Age that a fix with such wear has on a day when it was made on another. */
  age(wear: Wear, from: Day, to: Day): number;
};

const CHUNK_DAYS = 30;

/** Each rig has its own pace, and each month its own share of it. */
const readingOn = (day: Day, reading: number, unit: UseAxis): KeptUsage => {
  const date = dateOf(day).toString();
  return { id: 0, noteId: 0, saidAt: `${date}T20:00:00Z`, usage: { reading, unit, date } };
};

export const useOfRig = (random: Random, first: Day, days: number): RigUse => {
  const sums = new Map<UseAxis, Float64Array>();
  const log: KeptUsage[] = [];
  const pace = 0.5 + 1.2 * random();
  for (const axis of USE_AXES) {
    const sum = new Float64Array(days + 1);
    for (let start = 0; start < days; start += CHUNK_DAYS) {
      const length = Math.min(CHUNK_DAYS, days - start);
      const perDay = TYPICAL_PER_DAY[axis] * pace * 2 * random();
      for (let day = start; day < start + length; day++) sum[day + 1] = (sum[day] ?? 0) + perDay;
      log.push(readingOn(first + start, sum[start] ?? 0, axis));
    }
    sums.set(axis, sum);
  }
  return {
    log,
    age: (wear, from, to) => {
      const calendar = to - from;
      if (wear.axis === "calendar") return calendar;
      const sum = sums.get(wear.axis);
      const used = (sum?.[to - first] ?? 0) - (sum?.[from - first] ?? 0);
      return (1 - wear.useShare) * calendar + (wear.useShare * used) / TYPICAL_PER_DAY[wear.axis];
    },
  };
};
