import type { Exposure, UseUnit } from "../record.ts";
import { TYPICAL_PER_DAY, type UseAxis } from "./wear.ts";

/** The international mile, exact by its definition of 1959. */
const KM_PER_MILE = 1.609344;
export const milesOf = (km: number): number => km / KM_PER_MILE;

const DAYS_PER: Partial<Record<UseUnit, number>> = {
  days: 1,
  weeks: 7,
  months: 30.437,
  years: 365.2425,
  seasons: 91.3,
};

/** What a fix has been through, as days of calendar or as days of typical use. */
export type Worn = { readonly calendarDays: number } | { readonly useDays: number };

export const wornOf = ({ count, unit }: Exposure): Worn => {
  const calendar = DAYS_PER[unit];
  if (calendar !== undefined) return { calendarDays: count * calendar };
  const [amount, axis] = unit === "km" ? [milesOf(count), "miles"] : [count, unit];
  return { useDays: amount / TYPICAL_PER_DAY[axis as UseAxis] };
};
