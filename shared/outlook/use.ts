import type { Temporal } from "temporal-polyfill";
import type { KeptUsage } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import { type Day, dayOf, dayOfInstant, daysOf } from "./days.ts";
import { milesOf } from "./units.ts";
import { TYPICAL_PER_DAY, type UseAxis } from "./wear.ts";

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
  /** The pace of use as known on a day, today by default; it is what is expected when no trip is on. */
  perDay(axis: UseAxis, on?: Day): number;
  /** Whether the log tells of use on this axis. */
  kept(axis: UseAxis): boolean;
};

/** Use over some days, after which silence is taken for standing still for so many more. */
type Entry = { readonly from: Day; readonly to: Day; readonly count: number; readonly silence: number };

/** After an amount that was told, silence first means that the rig stood still, and later that nobody wrote. */
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
    else entries.push({ from, to, count: amount.count, silence: SILENCE_DAYS });
  }
  readings.sort((a, b) => a.day - b.day);
  readings.forEach((reading, index) => {
    const before = readings[index - 1];
    if (before === undefined || reading.value < before.value) return;
    const from = Math.min(before.day + 1, reading.day);
    entries.push({ from, to: reading.day, count: reading.value - before.value, silence: 0 });
  });
  return entries;
};

type Course = {
  readonly first: Day;
  readonly sums: Float64Array;
  readonly pace: number;
  /** Pace as known at the end of each day since the first one. */
  readonly paces: Float64Array;
  /** Pace before the first day told of. */
  readonly before: number;
};

type Told = { readonly first: Day; readonly daily: Float64Array; readonly spoken: Uint8Array };

const toldOf = (entries: readonly Entry[], today: Day): Told => {
  const first = entries.reduce((earliest, { from }) => Math.min(earliest, from), today);
  const daily = new Float64Array(today - first + 1);
  const spoken = new Uint8Array(daily.length);
  for (const { from, to, count, silence } of entries) {
    const perDay = count / (to - from + 1);
    for (let day = from; day <= to; day++) daily[day - first] = (daily[day - first] ?? 0) + perDay;
    spoken.fill(1, from - first, Math.min(daily.length, to - first + silence + 1));
  }
  return { first, daily, spoken };
};

/**
 * Running sums of use from the first day told of to today. Days of which nobody spoke count at the pace known by then,
 * so that later use never changes what went before.
 */
const courseOf = (entries: readonly Entry[], today: Day, typical: number): Course => {
  const { first, daily, spoken } = toldOf(entries, today);
  const sums = new Float64Array(daily.length + 1);
  const paces = new Float64Array(daily.length);
  let [told, heard, pace] = [typical * PACE_PRIOR_DAYS, PACE_PRIOR_DAYS, typical];
  daily.forEach((amount, index) => {
    const silent = spoken[index] === 0;
    sums[index + 1] = (sums[index] ?? 0) + amount + (silent ? pace : 0);
    if (!silent) {
      told += amount;
      heard++;
      pace = told / heard;
    }
    paces[index] = pace;
  });
  return { first, sums, pace, paces, before: typical };
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
  const { first, sums, pace, before } = course;
  if (day <= first) return (day - first) * before;
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

const paceOn = ({ first, paces, pace, before }: Course, day: Day): number =>
  day < first ? before : (paces[day - first] ?? pace);

type AxisUse = { readonly course: Course; readonly leg: Leg | undefined; readonly kept: boolean };

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
  const known = new Map<UseAxis, AxisUse>();
  const at = (axis: UseAxis): AxisUse => {
    const found = known.get(axis);
    if (found !== undefined) return found;
    const entries = entriesOf(input.usage, axis, today, input.hemisphere);
    const course = courseOf(entries, today, TYPICAL_PER_DAY[axis]);
    const made = { course, leg: legOf(input.trip, axis, course.pace), kept: entries.length > 0 };
    known.set(axis, made);
    return made;
  };
  return {
    today,
    between: (axis, from, to) => {
      const { course, leg } = at(axis);
      return until(course, leg, today, to) - until(course, leg, today, from);
    },
    perDay: (axis, on = today) => paceOn(at(axis).course, on),
    kept: (axis) => at(axis).kept,
  };
};
