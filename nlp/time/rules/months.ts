import { Temporal } from "temporal-polyfill";
import { nthWeekday } from "../holidays.ts";
import { dayOf, monthOf, type Period, spanOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { dateOf, lastWhole, monthIn, nearest, nextWhole } from "../resolve.ts";
import { type Place, rule, wordBefore } from "../rule.ts";

const PREPOSITIONS = new Set([
  "in",
  "of",
  "since",
  "until",
  "by",
  "during",
  "through",
  "around",
  "about",
  "before",
  "after",
  "and",
  "or",
  "to",
  "from",
  "between",
  "early",
  "late",
  "mid",
  "till",
  "last",
  "this",
  "next",
  "-",
  "/",
  "every",
]);

/** "may" and "march" are months only where the words around say so. */
const meantAsMonth = (place: Place): boolean => {
  const token = place.tokens[place.at];
  if (token === undefined) return false;
  const after = place.tokens[place.at + 1];
  if (token.raw === "may")
    return PREPOSITIONS.has(wordBefore(place)) || (token.capital && token.gap === "space");
  if (token.raw === "march")
    return !["on", "in", "up", "down", "off", "over"].includes(after?.gap === "space" ? after.raw : "");
  if (["mar", "jan", "dec", "sep"].includes(token.raw))
    return token.capital || PREPOSITIONS.has(wordBefore(place));
  return true;
};

const monthNear = (month: number, reference: Reference): Period => nearest(reference, monthIn(month));

/** The nearest such day in the preferred direction; 29 February waits for its year. */
const monthDayNear = (month: number, day: number, reference: Reference): Period | undefined => {
  const years = [0, -1, 1, -2, 2, -3, 3, -4, 4].map((shift) =>
    dateOf(reference.today.year + shift, month, day),
  );
  const days = years.filter((date) => date !== undefined).map(dayOf);
  const fits = ({ from }: Period) =>
    reference.prefer === "past"
      ? Temporal.PlainDate.compare(from, reference.today) <= 0
      : Temporal.PlainDate.compare(from, reference.today) >= 0;
  return days.find(fits);
};

const onDay = (year: number, month: number, day: number): Period | undefined => {
  const date = dateOf(year, month, day);
  return date && dayOf(date);
};

const found = (period: Period | undefined, direction: "past" | "future" | "either", sure: number) =>
  period && { period, direction, sure };

/** The latest (or next) n-th day of a month. */
const dayOfMonthNear = (day: number, { today, prefer }: Reference): Period | undefined => {
  const months = [0, 1, 2, 3].map((shift) =>
    prefer === "past" ? today.subtract({ months: shift }) : today.add({ months: shift }),
  );
  const days = months.map(({ year, month }) => dateOf(year, month, day)).filter((date) => date !== undefined);
  const there = days.find((date) =>
    prefer === "past"
      ? Temporal.PlainDate.compare(date, today) <= 0
      : Temporal.PlainDate.compare(date, today) >= 0,
  );
  return there && dayOf(there);
};

/** Words that can follow "on the third" when a day is meant; a noun would make it the third of something. */
const AFTER_DAY = new Set(
  "i we he she it they you and but so then when before after cause because im ive weve was had did put got to of that um uh my the a there at in with".split(
    " ",
  ),
);
const dayMeant = (place: Place): boolean => {
  const after = place.tokens[place.next];
  if (after === undefined || after.gap === "stop" || after.gap === "comma") return true;
  return AFTER_DAY.has(after.word);
};

const weekdayMonthDay = (weekday: number, day: number, reference: Reference): Period | undefined => {
  const { today, prefer } = reference;
  const sign = prefer === "past" ? -1 : 1;
  const days = Array.from({ length: 15 }, (_, i) => today.add({ months: sign * i }))
    .map(({ year, month }) => dateOf(year, month, day))
    .filter((date) => date?.dayOfWeek === weekday && Temporal.PlainDate.compare(date, today) * sign >= 0);
  return days[0] && dayOf(days[0]);
};

export const MONTHS_RULES = [
  ...rule(
    "month",
    ["in|during|through? <month>", "back in <month>", "in|during early|late|mid <month>", "<month>"],
    ({ month }, reference, place) => {
      const at = place.next - 1;
      return meantAsMonth({ ...place, at }) ? found(monthNear(month, reference), "either", 0.9) : undefined;
    },
  ),
  ...rule(
    "month-year",
    ["in? <month> ,of? <year>", "in? <month> of <loose>", "in? <month> the? year <year>"],
    (slots, _reference, _place) => {
      const { month } = slots;
      const year = "year" in slots ? slots.year : slots.loose;
      return found(monthIn(month)(Number(year)), "either", 0.97);
    },
  ),
  ...rule("month-loose-year", ["in? <month> <loose>"], ({ month, loose }, _reference, place) => {
    const token = place.tokens[place.next - 1];
    const apostrophe = token !== undefined && token.end - token.start === 3 && /^\d\d$/u.test(token.raw);
    return apostrophe ? found(monthIn(month)(loose), "either", 0.97) : undefined;
  }),
  ...rule(
    "last-month-name",
    ["in|back? last|past <month>", "in? this past|last <month>", "back in last <month>"],
    ({ month }, reference) => found(lastWhole(reference.today, monthIn(month)), "past", 0.9),
  ),
  ...rule(
    "this-month-name",
    ["this <month>", "in? <month> this year", "in? <month> of this year"],
    ({ month }, { today }) => found(monthIn(month)(today.year), "either", 0.9),
  ),
  ...rule(
    "next-month-name",
    ["next <month>", "this? coming <month>", "in? <month> next year"],
    ({ month }, reference, place) =>
      place.tokens[place.next - 1]?.word === "year"
        ? found(monthIn(month)(reference.today.year + 1), "future", 0.95)
        : found(nextWhole(reference.today, monthIn(month)), "future", 0.9),
  ),
  ...rule(
    "month-last-year",
    ["in? <month> of? last year", "last year in|around|about? <month>", "last year ,back? in <month>"],
    ({ month }, { today }) => found(monthIn(month)(today.year - 1), "past", 0.97),
  ),
  ...rule(
    "month-year-before-last",
    ["in? <month> of? the? year before last", "in? <month> two years ago"],
    ({ month }, { today }) => found(monthIn(month)(today.year - 2), "past", 0.95),
  ),
  ...rule("month-before-last", ["the? <month> before last"], ({ month }, { today }) =>
    found(monthOf(lastWhole(today, monthIn(month)).from.subtract({ years: 1 })), "past", 0.9),
  ),
  ...rule(
    "or-month",
    ["in? <month> or|- <month2>", "in? <month> / <month2>", "<month> and <month2>"],
    ({ month, month2 }, reference, place) => {
      if (!meantAsMonth({ ...place, at: place.next - 3 })) return undefined;
      const second = monthNear(month2, reference);
      const first = monthIn(month)(month <= month2 ? second.from.year : second.from.year - 1);
      return found(spanOf(first, second), "either", 0.85);
    },
  ),
  ...rule(
    "month-day",
    [
      "on? <month> <mday>",
      "on? <month> the <ord>",
      "on? the? <ord> of <month>",
      "on? <mday> <month>",
      "on? <ord> <month>",
    ],
    (slots, reference, place) => {
      const { month } = slots;
      const day = "mday" in slots ? slots.mday : slots.ord;
      const token = place.tokens[place.next];
      if (token?.gap === "none" && token.raw === "/") return undefined;
      return found(monthDayNear(month, Number(day), reference), "either", 0.95);
    },
  ),
  ...rule(
    "month-day-year",
    [
      "on? <month> <mday> ,<year>",
      "on? <month> the <ord> ,<year>",
      "on? the? <ord> of <month> ,<year>",
      "on? <mday> <month> ,<year>",
      "on? <month> <mday> of <year>",
    ],
    (slots) => {
      const { month, year } = slots;
      const day = "mday" in slots ? slots.mday : slots.ord;
      return found(onDay(year, month, Number(day)), "either", 0.99);
    },
  ),
  ...rule(
    "month-day-last-year",
    ["on? <month> <mday> of? last year", "on? the? <ord> of <month> of? last year", "last <month> <mday>"],
    (slots, { today }) => {
      const { month } = slots;
      const day = "mday" in slots ? slots.mday : slots.ord;
      return found(onDay(today.year - 1, month, Number(day)), "past", 0.95);
    },
  ),
  ...rule(
    "weekday-date",
    ["on? <weekday> ,the? <mday> of? <month>", "on? <weekday> ,<month> the? <mday>"],
    ({ month, mday }, reference) => found(monthDayNear(month, mday, reference), "either", 0.97),
  ),
  ...rule(
    "weekday-month-day",
    ["on? <weekday> ,the <ord>", "on? <weekday> ,<ord>"],
    ({ weekday, ord }, reference) => found(weekdayMonthDay(weekday, ord, reference), "either", 0.9),
  ),
  ...rule(
    "day-of-month",
    ["on the <ord>", "since|by|until|before|after the <ord>"],
    ({ ord }, reference, place) => {
      if (
        place.tokens[place.at]?.word !== "on" ||
        !dayMeant(place) ||
        place.tokens[place.next]?.word === "of"
      )
        return undefined;
      return found(dayOfMonthNear(ord, reference), "either", 0.75);
    },
  ),
  ...rule("day-of-this-month", ["on? the? <ord> of this month"], ({ ord }, { today }) =>
    found(onDay(today.year, today.month, ord), "either", 0.95),
  ),
  ...rule("day-of-last-month", ["on? the? <ord> of last month"], ({ ord }, { today }) => {
    const month = today.subtract({ months: 1 });
    return found(onDay(month.year, month.month, ord), "past", 0.95);
  }),
  ...rule("nth-weekday", ["on? the? <ord> <weekday> of|in <when>"], ({ ord, weekday, when }) =>
    when.grain === "month" && ord < 6
      ? found(dayOf(nthWeekday(when.from.year, when.from.month, weekday, ord)), "either", 0.9)
      : undefined,
  ),
  ...rule("last-weekday-of", ["on? the? last <weekday> of|in <when>"], ({ weekday, when }) =>
    when.grain === "month"
      ? found(dayOf(nthWeekday(when.from.year, when.from.month, weekday, -1)), "either", 0.9)
      : undefined,
  ),
];
