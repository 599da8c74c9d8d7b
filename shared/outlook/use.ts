import type { Temporal } from "temporal-polyfill";
import type { KeptUsage } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import { type Day, dayOf, dayOfInstant, daysOf } from "./days.ts";
import { milesOf } from "./units.ts";
import { TYPICAL_PER_DAY, USE_AXES, type UseAxis } from "./wear.ts";

/** A trip that was announced. `to` is the day of coming home. */
export type Trip = {
  readonly from: Temporal.PlainDate;
  readonly to: Temporal.PlainDate;
  readonly miles: number | null;
};

/** How the rig was and will be used. */
export type Use = {
  readonly today: Day;
  /** Use on an axis from one day to another; days after today are a forecast. */
  between(axis: UseAxis, from: Day, to: Day): number;
  /** The pace expected when no trip is on. */
  perDay(axis: UseAxis): number;
  /** Whether the log tells of use on this axis. */
  kept(axis: UseAxis): boolean;
};

type Entry = { readonly from: Day; readonly to: Day; readonly count: number };

/** Days after the last entry for which silence means that the rig stood still; later, silence means that nobody wrote. */
const SILENCE_DAYS = 45;
/** How many days of the log outweigh the typical pace. */
const PACE_PRIOR_DAYS = 60;

const axisEntry = (kept: KeptUsage, axis: UseAxis): { count: number; reading: boolean } | undefined => {
  const { usage } = kept;
  const amount = "count" in usage ? usage.count : usage.reading;
  if (usage.unit === "km")
    return axis === "miles" ? { count: milesOf(amount), reading: "reading" in usage } : undefined;
  return usage.unit === axis ? { count: amount, reading: "reading" in usage } : undefined;
};

const daysOfUsage = (kept: KeptUsage, today: Day, hemisphere: Hemisphere): readonly [Day, Day] => {
  const span = kept.usage.date === null ? undefined : daysOf(kept.usage.date, hemisphere);
  const said = dayOfInstant(kept.saidAt);
  const [from, to] = span ?? [said, said];
  return [Math.min(from, today), Math.min(to, today)];
};

/** Amounts as told, and the differences between meter readings spread over the days between them. */
const entriesOf = (log: readonly KeptUsage[], axis: UseAxis, today: Day, hemisphere: Hemisphere): Entry[] => {
  const entries: Entry[] = [];
  const readings: { day: Day; value: number }[] = [];
  for (const kept of log) {
    const amount = axisEntry(kept, axis);
    if (amount === undefined) continue;
    const [from, to] = daysOfUsage(kept, today, hemisphere);
    if (amount.reading) readings.push({ day: to, value: amount.count });
    else entries.push({ from, to, count: amount.count });
  }
  readings.sort((a, b) => a.day - b.day);
  readings.forEach((reading, index) => {
    const before = readings[index - 1];
    if (before === undefined || reading.value < before.value) return;
    entries.push({
      from: Math.min(before.day + 1, reading.day),
      to: reading.day,
      count: reading.value - before.value,
    });
  });
  return entries;
};

/** Use per day from `first` to today, with the typical pace wherever nobody had written for a while. */
const dailyUse = (entries: readonly Entry[], first: Day, today: Day, typical: number): Float64Array => {
  const daily = new Float64Array(today - first + 1);
  const spoken = new Uint8Array(daily.length);
  for (const { from, to, count } of entries) {
    for (let day = from; day <= to; day++)
      daily[day - first] = (daily[day - first] ?? 0) + count / (to - from + 1);
    spoken.fill(1, Math.max(0, from - first), Math.min(daily.length, to - first + SILENCE_DAYS + 1));
  }
  spoken.forEach((heard, index) => {
    if (heard === 0) daily[index] = (daily[index] ?? 0) + typical;
  });
  return daily;
};

type Course = {
  readonly first: Day;
  readonly sums: Float64Array;
  readonly pace: number;
  readonly typical: number;
};

const courseOf = (entries: readonly Entry[], today: Day, typical: number): Course => {
  const first = entries.reduce((earliest, { from }) => Math.min(earliest, from), today);
  const sums = new Float64Array(today - first + 2);
  if (entries.length > 0)
    dailyUse(entries, first, today, typical).forEach((amount, index) => {
      sums[index + 1] = (sums[index] ?? 0) + amount;
    });
  else sums[1] = typical;
  const total = sums[sums.length - 1] ?? 0;
  const pace = (typical * PACE_PRIOR_DAYS + total) / (PACE_PRIOR_DAYS + sums.length - 1);
  return { first, sums, pace, typical };
};

type Leg = { readonly from: Day; readonly to: Day; readonly perDay: number };

const legOf = (trip: Trip | null, axis: UseAxis, pace: number): Leg | undefined => {
  if (trip === null) return undefined;
  const from = dayOf(trip.from);
  const to = Math.max(dayOf(trip.to), from + 1);
  const days = to - from;
  if (axis === "miles") return trip.miles === null ? undefined : { from, to, perDay: trip.miles / days };
  if (axis === "nights") return { from, to, perDay: 1 };
  return { from, to, perDay: pace };
};

/** Use on a trip, from its miles where they were said and from the pace otherwise. */
export const useOnTrip = (axis: UseAxis, trip: Trip, use: Use): number => {
  const leg = legOf(trip, axis, use.perDay(axis));
  const days = Math.max(1, dayOf(trip.to) - dayOf(trip.from));
  return days * (leg?.perDay ?? use.perDay(axis));
};

/** Use from the start of the log to the start of a day (fractions of days allowed). */
const until = (course: Course, leg: Leg | undefined, today: Day, day: Day): number => {
  const { first, sums, pace, typical } = course;
  if (day <= first) return (day - first) * typical;
  if (day <= today + 1) {
    const whole = Math.floor(day - first);
    const low = sums[whole] ?? 0;
    return low + ((sums[whole + 1] ?? low) - low) * (day - first - whole);
  }
  const past = sums[sums.length - 1] ?? 0;
  const ahead = (day - today - 1) * pace;
  if (leg === undefined) return past + ahead;
  const onLeg = Math.max(0, Math.min(day, leg.to) - Math.max(today + 1, leg.from));
  return past + ahead + onLeg * (leg.perDay - pace);
};

/**
 * The use of the rig from its log and an announced trip. Pace is the log's own average, drawn towards the typical
 * pace while the log is short.
 */
export const useOf = (input: {
  readonly usage: readonly KeptUsage[];
  readonly trip: Trip | null;
  readonly today: Temporal.PlainDate;
  readonly hemisphere: Hemisphere;
}): Use => {
  const today = dayOf(input.today);
  const courses = new Map(
    USE_AXES.map((axis) => {
      const entries = entriesOf(input.usage, axis, today, input.hemisphere);
      const course = courseOf(entries, today, TYPICAL_PER_DAY[axis]);
      return [axis, { course, leg: legOf(input.trip, axis, course.pace), kept: entries.length > 0 }] as const;
    }),
  );
  const at = (axis: UseAxis) => {
    const known = courses.get(axis);
    if (known === undefined) throw new Error(`No use is kept on the axis "${axis}".`);
    return known;
  };
  return {
    today,
    between: (axis, from, to) => {
      const { course, leg } = at(axis);
      return until(course, leg, today, to) - until(course, leg, today, from);
    },
    perDay: (axis) => at(axis).course.pace,
    kept: (axis) => at(axis).kept,
  };
};
