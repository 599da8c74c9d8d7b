import { Temporal } from "temporal-polyfill";
import { dayOf, isBefore, monthOf, type Period, seasonOf, spanOf, weekOf, yearOf } from "./period.ts";
import type { Prefer, Reference } from "./reference.ts";
import { addTo } from "./shift.ts";

type Day = Temporal.PlainDate;

/** The latest yearly period begun by today, or the next one not yet over. */
export const nearest = (
  { today, prefer }: { readonly today: Day; readonly prefer: Prefer },
  make: (year: number) => Period,
): Period => {
  const around = [-2, -1, 0, 1, 2].map((years) => make(today.year + years));
  const past = around.filter((period) => !isBefore(today, period.from)).at(-1);
  const future = around.find((period) => !isBefore(period.last, today));
  return (prefer === "past" ? past : future) ?? make(today.year);
};

/** The latest one that was over before today. */
export const lastWhole = (today: Day, make: (year: number) => Period): Period =>
  [1, 0, -1, -2].map((years) => make(today.year + years)).find((period) => isBefore(period.last, today)) ??
  make(today.year - 1);

/** The first one that begins after today. */
export const nextWhole = (today: Day, make: (year: number) => Period): Period =>
  [-1, 0, 1, 2].map((years) => make(today.year + years)).find((period) => isBefore(today, period.from)) ??
  make(today.year + 1);

export const monthIn =
  (month: number) =>
  (year: number): Period =>
    monthOf(new Temporal.PlainDate(year, month, 1));

export const seasonIn =
  (code: number, { hemisphere }: Reference) =>
  (year: number): Period =>
    seasonOf(code, year, hemisphere);

/** A day of a month, or undefined where the month is too short. */
export const dateOf = (year: number, month: number, day: number): Day | undefined => {
  const first = new Temporal.PlainDate(year, month, 1);
  return day >= 1 && day <= first.daysInMonth ? first.with({ day }) : undefined;
};

/** Strictly before today, at most a week. */
export const weekdayBefore = (today: Day, weekday: number): Day =>
  today.subtract({ days: (today.dayOfWeek - weekday + 7) % 7 || 7 });
/** Strictly after today, at most a week. */
export const weekdayAfter = (today: Day, weekday: number): Day =>
  today.add({ days: (weekday - today.dayOfWeek + 7) % 7 || 7 });
export const weekdayNear = ({ today, prefer }: Reference, weekday: number): Day =>
  prefer === "past" ? weekdayBefore(today, weekday) : weekdayAfter(today, weekday);
/** The weekday of a Monday-to-Sunday week. */
export const weekdayIn = (week: Period, weekday: number): Day => week.from.add({ days: weekday - 1 });

/** Saturday and Sunday of the week of a day. */
export const weekendOf = (day: Day): Period => {
  const { from } = weekOf(day);
  return spanOf(dayOf(from.add({ days: 5 })), dayOf(from.add({ days: 6 })));
};

/** The n-th unit around today: 0 this one, -1 the last. */
export const unitAround = (
  { today }: Reference,
  unit: "day" | "week" | "fortnight" | "month" | "year",
  shift: number,
): Period => {
  if (unit === "day") return dayOf(today.add({ days: shift }));
  if (unit === "week") return weekOf(today.add({ days: 7 * shift }));
  if (unit === "fortnight") {
    const first = weekOf(today.add({ days: 14 * shift + (shift < 0 ? 0 : 7) }));
    return spanOf(first, weekOf(first.from.add({ days: 7 })));
  }
  if (unit === "month") return monthOf(addTo(today, "month", shift));
  return yearOf(today.year + shift);
};
