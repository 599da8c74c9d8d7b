import { Temporal } from "temporal-polyfill";
import { dayOf, isBefore, monthOf, type Period, seasonOf, spanOf, weekOf, yearOf } from "./period.ts";
import type { Prefer, Reference } from "./reference.ts";
import { addTo } from "./shift.ts";

type Day = Temporal.PlainDate;

/** Where the next thing that comes again is looked for. */
export type Outlook = { readonly today: Day; readonly prefer: Prefer };
const preferOf = (side: -1 | 1): Prefer => (side < 0 ? "past" : "future");

/** The latest yearly period begun by today, or the next one not yet over. */
export const nearest = ({ today, prefer }: Outlook, make: (year: number) => Period): Period => {
  const around = [-2, -1, 0, 1, 2].map((years) => make(today.year + years));
  const past = around.filter((period) => !isBefore(today, period.from)).at(-1);
  const future = around.find((period) => !isBefore(period.last, today));
  const period = (prefer === "past" ? past : future) ?? make(today.year);
  return { ...period, recurs: (limit, side) => nearest({ today: limit, prefer: preferOf(side) }, make) };
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

const onSide = (date: Day, { today, prefer }: Outlook): boolean =>
  prefer === "past" ? !isBefore(today, date) : !isBefore(date, today);

/** The first of these days that lies on the preferred side; it comes again as `again` says. */
const firstOf = (
  days: readonly (Day | undefined)[],
  outlook: Outlook,
  again: (outlook: Outlook) => Period | undefined,
): Period | undefined => {
  const date = days.find((day) => day !== undefined && onSide(day, outlook));
  if (date === undefined) return undefined;
  const recurs = (limit: Day, side: -1 | 1) => again({ today: limit, prefer: preferOf(side) }) ?? dayOf(date);
  return { ...dayOf(date), recurs };
};
const signOf = ({ prefer }: Outlook): -1 | 1 => (prefer === "past" ? -1 : 1);

/** The nearest such day of the year in the preferred direction; 29 February waits for its year. */
export const monthDayNear = (month: number, day: number, outlook: Outlook): Period | undefined => {
  const years = Array.from({ length: 9 }, (_, i) => outlook.today.year + signOf(outlook) * i);
  return firstOf(
    years.map((year) => dateOf(year, month, day)),
    outlook,
    (next) => monthDayNear(month, day, next),
  );
};

const monthsOn = (outlook: Outlook, count: number): readonly Day[] =>
  Array.from({ length: count }, (_, i) =>
    outlook.today.with({ day: 1 }).add({ months: signOf(outlook) * i }),
  );

/** The latest or next n-th day of a month. */
export const dayOfMonthNear = (day: number, outlook: Outlook): Period | undefined =>
  firstOf(
    monthsOn(outlook, 4).map(({ year, month }) => dateOf(year, month, day)),
    outlook,
    (next) => dayOfMonthNear(day, next),
  );

/** The latest or next "Friday the 13th". */
export const weekdayMonthDayNear = (weekday: number, day: number, outlook: Outlook): Period | undefined =>
  firstOf(
    monthsOn(outlook, 15)
      .map(({ year, month }) => dateOf(year, month, day))
      .filter((date) => date?.dayOfWeek === weekday),
    outlook,
    (next) => weekdayMonthDayNear(weekday, day, next),
  );

/** Strictly before today, at most a week. */
export const weekdayBefore = (today: Day, weekday: number): Day =>
  today.subtract({ days: (today.dayOfWeek - weekday + 7) % 7 || 7 });
/** Strictly after today, at most a week. */
export const weekdayAfter = (today: Day, weekday: number): Day =>
  today.add({ days: (weekday - today.dayOfWeek + 7) % 7 || 7 });
export const weekdayNear = ({ today, prefer }: Outlook, weekday: number): Period => ({
  ...dayOf(prefer === "past" ? weekdayBefore(today, weekday) : weekdayAfter(today, weekday)),
  recurs: (limit, side) => weekdayNear({ today: limit, prefer: preferOf(side) }, weekday),
});
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
    const edge = today.add({ days: 14 * shift });
    return shift < 0
      ? spanOf(dayOf(edge), dayOf(today))
      : spanOf(dayOf(today), dayOf(edge.add({ days: shift === 0 ? 14 : 0 })));
  }
  if (unit === "month") return monthOf(addTo(today, "month", shift));
  return yearOf(today.year + shift);
};
