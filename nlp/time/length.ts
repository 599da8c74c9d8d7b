import { Temporal } from "temporal-polyfill";
import type { Exposure, UseUnit } from "../../shared/record.ts";
import type { TimeUnit } from "./lexicon.ts";

/** How long: "about six weeks", "a year and a half", "three or four months". */
export type Length = {
  readonly low: number;
  readonly high: number;
  readonly unit: TimeUnit;
  readonly about: boolean;
};

const DAYS: Readonly<Record<TimeUnit, number>> = {
  minute: 0,
  hour: 0,
  day: 1,
  week: 7,
  fortnight: 14,
  month: 30,
  year: 365,
};
const MONTHS_IN: Partial<Record<TimeUnit, number>> = { month: 1, year: 12 };

/** Nobody speaks of longer in a log. */
const LONGEST_DAYS = 150 * 365;
export const isTooLong = ({ high, unit }: Length): boolean => high * DAYS[unit] > LONGEST_DAYS;

/** The lower end of one length and the upper end of another: "six months or a year", "a week or ten days". */
export const fromOneToOther = (a: Length, b: Length): Length => {
  if (a.unit === b.unit) return { ...a, high: b.high };
  const [first, second] = [MONTHS_IN[a.unit], MONTHS_IN[b.unit]];
  if (first !== undefined && second !== undefined)
    return { ...a, low: a.low * first, high: b.high * second, unit: "month" };
  return { ...a, low: a.low * DAYS[a.unit], high: b.high * DAYS[b.unit], unit: "day" };
};

/** "Two years and three months", "a week and three days"; longer ones with days are told roughly. */
export const together = (length: Length, more: Length): Length | undefined => {
  if (DAYS[more.unit] >= DAYS[length.unit] || DAYS[more.unit] === 0) return undefined;
  const [first, second] = [MONTHS_IN[length.unit], MONTHS_IN[more.unit]];
  if (first !== undefined && second !== undefined) {
    const months = length.low * first + more.low * second;
    return { ...length, low: months, high: months, unit: "month" };
  }
  const days = length.low * DAYS[length.unit] + more.low * DAYS[more.unit];
  return { ...length, low: days, high: days, unit: "day", about: length.about || first !== undefined };
};

/** A count of one unit as a duration in whole days, months and so on; halves go to the next smaller unit. */
export const durationOf = (amount: number, unit: TimeUnit): Temporal.Duration => {
  if (unit === "hour") return Temporal.Duration.from({ minutes: Math.round(amount * 60) });
  if (unit === "minute") return Temporal.Duration.from({ minutes: Math.round(amount) });
  if (unit === "year") return Temporal.Duration.from({ months: Math.round(amount * 12) });
  if (unit === "month" && Number.isInteger(amount)) return Temporal.Duration.from({ months: amount });
  return Temporal.Duration.from({ days: Math.round(amount * DAYS[unit]) });
};

const USE: Partial<Record<TimeUnit, UseUnit>> = {
  day: "days",
  week: "weeks",
  month: "months",
  year: "years",
};

/** The middle of a range as a single length. */
export const middleOf = (length: Length): Length => {
  const middle = Math.floor((length.low + length.high) / 2);
  return length.low === length.high ? length : { ...length, low: middle, high: middle };
};

/** The length as use that something went through: ranges give their middle rounded down, halves the smaller unit. */
export const exposureOf = ({ low, high, unit }: Length): Exposure | undefined => {
  if (unit === "fortnight") return { count: Math.floor(low + high), unit: "weeks" };
  const use = USE[unit];
  if (use === undefined) return undefined;
  const middle = (low + high) / 2;
  if (low !== high || Number.isInteger(middle)) return { count: Math.floor(middle), unit: use };
  if (unit === "year") return { count: Math.round(middle * 12), unit: "months" };
  if (unit === "month") return { count: Math.round(middle * 4), unit: "weeks" };
  return { count: Math.floor(middle * DAYS[unit]), unit: "days" };
};
