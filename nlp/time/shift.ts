import type { Temporal } from "temporal-polyfill";
import { durationOf, type Length } from "./length.ts";
import type { TimeUnit } from "./lexicon.ts";
import { about, dayOf, monthOf, type Period, spanOf, yearOf } from "./period.ts";
import type { Reference } from "./reference.ts";

type Day = Temporal.PlainDate;

/** Whole days, months and so on from a day; negative goes back. Hours are left out. */
export const addTo = (day: Day, unit: TimeUnit, amount: number): Day =>
  unit === "hour" || unit === "minute" ? day : day.add(durationOf(amount, unit));

const exact = (amount: number): boolean => Number.isInteger(amount);

/** A day that lies a number of units from another, at the grain in which people mean it. */
const landing = (day: Day, unit: TimeUnit, amount: number): Period => {
  const there = addTo(day, unit, amount);
  if (unit === "year") return exact(amount) ? yearOf(there.year) : about(monthOf(there));
  if (unit === "month") return exact(amount) ? monthOf(there) : about(monthOf(there));
  return dayOf(there);
};

/**
 * The time that lies a length from a day; sign -1 goes back. "N days" and "N weeks" give the exact day,
 * months a month, years a year, a range all that lies between its ends.
 */
export const shifted = (day: Day, length: Length, sign: 1 | -1): Period => {
  const low = landing(day, length.unit, sign * length.low);
  const period =
    length.high === length.low ? low : spanOf(low, landing(day, length.unit, sign * length.high));
  return length.about ? about(period) : period;
};

/** As `shifted` from now, where hours may cross midnight. */
export const fromNow = (reference: Reference, length: Length, sign: 1 | -1): Period => {
  if (length.unit !== "hour" && length.unit !== "minute") return shifted(reference.today, length, sign);
  const minutes = Math.round(length.high * (length.unit === "hour" ? 60 : 1));
  return dayOf(reference.now.add({ minutes: sign * minutes }).toPlainDate());
};
