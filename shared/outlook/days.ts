import { Temporal } from "temporal-polyfill";
import { daySpan } from "../edtf.ts";
import type { Hemisphere } from "../reading.ts";
import type { Edtf } from "../record.ts";

/** Whole days since 1970-01-01. */
export type Day = number;

const MILLIS_PER_DAY = 86_400_000;

export const dayOf = (date: Temporal.PlainDate): Day =>
  Math.round(Date.UTC(date.year, date.month - 1, date.day) / MILLIS_PER_DAY);

const DAYS_PER_ERA = 146_097;
/** Days from 1 March of the year 0 to 1970-01-01. */
const EPOCH_FROM_MARCH_0 = 719_468;

/** Year, month from 1 and day of the month, in the Gregorian calendar; years are counted from March. */
export const civilOf = (
  day: Day,
): { readonly year: number; readonly month: number; readonly date: number } => {
  const since = Math.round(day) + EPOCH_FROM_MARCH_0;
  const era = Math.floor(since / DAYS_PER_ERA);
  const ofEra = since - era * DAYS_PER_ERA;
  const leaps = Math.floor(ofEra / 1460) - Math.floor(ofEra / 36_524) + Math.floor(ofEra / 146_096);
  const yearOfEra = Math.floor((ofEra - leaps) / 365);
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  const date = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, date };
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
