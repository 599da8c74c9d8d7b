import { Temporal } from "temporal-polyfill";
import type { Hemisphere } from "../../shared/reading.ts";
import type { Edtf } from "../../shared/record.ts";

export type Grain = "day" | "week" | "month" | "season" | "year" | "span";

/** A stretch of civil days, both ends included, and how it is written. */
export type Period = {
  readonly grain: Grain;
  readonly from: Temporal.PlainDate;
  readonly last: Temporal.PlainDate;
  /** Without a qualifier. */
  readonly written: Edtf;
  readonly about: boolean;
  /** For what comes again ("in May", "on Friday"): the latest begun by a day (-1) or the first not over by it (1). */
  readonly recurs?: (limit: Temporal.PlainDate, side: -1 | 1) => Period;
};

type Day = Temporal.PlainDate;
const two = (n: number): string => String(n).padStart(2, "0");
const four = (n: number): string => String(n).padStart(4, "0");

export const dayOf = (date: Day): Period => ({
  grain: "day",
  from: date,
  last: date,
  written: date.toString(),
  about: false,
});

export const monthOf = (date: Day): Period => {
  const from = date.with({ day: 1 });
  const last = from.with({ day: from.daysInMonth });
  return { grain: "month", from, last, written: `${four(from.year)}-${two(from.month)}`, about: false };
};

export const yearOf = (year: number): Period => ({
  grain: "year",
  from: new Temporal.PlainDate(year, 1, 1),
  last: new Temporal.PlainDate(year, 12, 31),
  written: four(year),
  about: false,
});

const NORTHERN_START: Readonly<Record<number, number>> = { 21: 3, 22: 6, 23: 9, 24: 12 };

/** Meteorological seasons, named by the year in which they start. Code 21 to 24. */
export const seasonOf = (code: number, year: number, hemisphere: Hemisphere): Period => {
  const northern = NORTHERN_START[code] ?? 3;
  const month = hemisphere === "north" ? northern : ((northern + 5) % 12) + 1;
  const from = new Temporal.PlainDate(year, month, 1);
  const last = from.add({ months: 3 }).subtract({ days: 1 });
  return { grain: "season", from, last, written: `${four(year)}-${code}`, about: false };
};

/** Monday to Sunday. */
export const weekOf = (date: Day): Period => {
  const from = date.subtract({ days: date.dayOfWeek - 1 });
  const last = from.add({ days: 6 });
  return { grain: "week", from, last, written: `${from.toString()}/${last.toString()}`, about: false };
};

/** What is counted from a period comes again when the period does. */
export const derived = (period: Period, make: (period: Period) => Period): Period => {
  const { recurs } = period;
  const made = make(period);
  return recurs === undefined
    ? made
    : { ...made, recurs: (limit, side) => derived(recurs(limit, side), make) };
};

/**
 * As `derived`, but what is counted must itself lie on the preferred side of today:
 * "the week before Christmas" may be over when Christmas is not.
 */
export const settled = (
  period: Period,
  { today, prefer }: { readonly today: Temporal.PlainDate; readonly prefer: "past" | "future" },
  make: (period: Period) => Period,
): Period => {
  const near = derived(period, make);
  const { recurs } = period;
  if (recurs === undefined) return near;
  if (prefer === "future")
    return isBefore(near.last, today) ? derived(recurs(period.last.add({ days: 1 }), 1), make) : near;
  const far = derived(recurs(today, 1), make);
  return isBefore(today, far.from) ? near : far;
};

/** Two ends of a stretch, what comes again put where it fits the other end: "from November to March". */
const inOrder = (a: Period, b: Period): readonly [Period, Period] => {
  if (a.recurs !== undefined) return [a.recurs(b.from, -1), b];
  return b.recurs === undefined ? [a, b] : [a, b.recurs(a.last, 1)];
};

/** From one period to another, as said; it comes again when both ends do. */
export const fromTo = (a: Period, b: Period): Period => {
  const span = spanOf(...inOrder(a, b));
  const again = a.recurs === undefined ? undefined : b.recurs;
  return again === undefined ? span : { ...span, recurs: (limit, side) => fromTo(a, again(limit, side)) };
};

/** Some time within two periods and what lies between them, in either order. */
export const spanOf = (a: Period, b: Period): Period => {
  const [first, second] = Temporal.PlainDate.compare(a.from, b.from) <= 0 ? [a, b] : [b, a];
  if (first.written === second.written) return first;
  const start = first.grain === "week" || first.grain === "span" ? first.from.toString() : first.written;
  const end = second.grain === "week" || second.grain === "span" ? second.last.toString() : second.written;
  return {
    grain: "span",
    from: first.from,
    last: second.last,
    written: `${start}/${end}`,
    about: a.about || b.about,
  };
};

export const about = (period: Period): Period => ({ ...period, about: true });

/** EDTF, with ~ where it is approximate. */
export const edtfOf = (period: Period): Edtf =>
  period.about ? period.written.replace(/[^/]+/gu, (part) => `${part}~`) : period.written;

export const isBefore = (a: Day, b: Day): boolean => Temporal.PlainDate.compare(a, b) < 0;
