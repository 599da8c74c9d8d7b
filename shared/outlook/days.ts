import { Temporal } from "temporal-polyfill";
import { daySpan } from "../edtf.ts";
import type { Hemisphere } from "../reading.ts";
import type { Edtf } from "../record.ts";

/** Whole days since 1970-01-01. */
export type Day = number;

const MILLIS_PER_DAY = 86_400_000;

export const dayOf = (date: Temporal.PlainDate): Day =>
  Math.round(Date.UTC(date.year, date.month - 1, date.day) / MILLIS_PER_DAY);

/** Year, month from 1 and day of the month. */
export const civilOf = (
  day: Day,
): { readonly year: number; readonly month: number; readonly date: number } => {
  const utc = new Date(Math.round(day) * MILLIS_PER_DAY);
  return { year: utc.getUTCFullYear(), month: utc.getUTCMonth() + 1, date: utc.getUTCDate() };
};

export const dateOf = (day: Day): Temporal.PlainDate => {
  const { year, month, date } = civilOf(day);
  return new Temporal.PlainDate(year, month, date);
};

/** The civil day written at the front of an ISO 8601 instant. */
export const dayOfInstant = (iso: string): Day =>
  Math.round(Date.parse(`${iso.slice(0, 10)}T00:00Z`) / MILLIS_PER_DAY);

const EXACT = /^\d{4}-(?:0[1-9]|1[0-2])-\d{2}$/;

/** First and last day (inclusive) of a date, or undefined when it has no bounds. */
export const daysOf = (edtf: Edtf, hemisphere: Hemisphere): readonly [Day, Day] | undefined => {
  if (EXACT.test(edtf)) {
    const day = dayOfInstant(edtf);
    return Number.isNaN(day) ? undefined : [day, day];
  }
  const span = daySpan(edtf, hemisphere);
  return span && [dayOf(span.from), dayOf(span.to) - 1];
};
