import { nthWeekday } from "../holidays.ts";
import { either, future, past } from "../meaning.ts";
import { restsThere } from "../meant.ts";
import { isMoney, isVerbMay } from "../not-dates.ts";
import { dayOf, derived, fromTo, type Period, weekOf } from "../period.ts";
import {
  dateOf,
  dayOfMonthNear,
  monthDayNear,
  unitAround,
  weekdayMonthDayNear,
  weekendOf,
} from "../resolve.ts";
import { type Place, rule } from "../rule.ts";

const onDay = (year: number, month: number, day: number): Period | undefined => {
  const date = dateOf(year, month, day);
  return date && dayOf(date);
};
const inMonth = (month: Period, day: number): Period | undefined =>
  onDay(month.from.year, month.from.month, day);

/** "20 may need": a verb; "may 3/8": a size. */
const isOther = (place: Place): boolean => {
  const after = place.tokens[place.next];
  return (
    isMoney(place.tokens, place) ||
    isVerbMay(place.tokens, place) ||
    (after?.gap === "none" && (after.raw === "/" || after.raw === "%"))
  );
};

export const MONTH_DAY_RULES = [
  ...rule(
    "month-day",
    [
      "on|for|around|about? <month> <mday>",
      "on? <month> the <ord>",
      "on? the? <ord> of <month>",
      "on? the? <mday> <month>",
      "on? the? <ord> day of <month>",
    ],
    (slots, reference, place) => {
      const day = "mday" in slots ? slots.mday : slots.ord;
      return isOther(place) ? undefined : either(monthDayNear(slots.month, day, reference), 0.95);
    },
  ),
  ...rule(
    "month-day-that-year",
    [
      "on? <month> <mday> ,of? that year",
      "on? the? <ord> of <month> ,of? that year",
      "on? the? <mday> <month> ,of? that year",
    ],
    (slots, _reference, { before }) => {
      const day = "mday" in slots ? slots.mday : slots.ord;
      return past(before && onDay(before.from.year, slots.month, day), 0.9);
    },
  ),
  ...rule(
    "month-day-year",
    [
      "on? <month> <mday> ,of|in? <loose>",
      "on? <month> the <ord> ,of? <year>",
      "on? the? <ord> of <month> ,of|in? <loose>",
      "on? the? <mday> <month> ,of|in? <year>",
    ],
    (slots) => {
      const day = "mday" in slots ? slots.mday : slots.ord;
      const year = "loose" in slots ? slots.loose : slots.year;
      return either(onDay(year, slots.month, day), 0.98);
    },
  ),
  ...rule(
    "month-day-last-year",
    [
      "on? <month> <mday> of? last year",
      "on? the? <ord> of <month> of? last year",
      "on? last <month> <mday>",
    ],
    (slots, { today }) => {
      const day = "mday" in slots ? slots.mday : slots.ord;
      return past(onDay(today.year - 1, slots.month, day), 0.95);
    },
  ),
  ...rule(
    "month-day-this-year",
    ["on? <month> <mday> of? this year", "on? the? <ord> of <month> of? this year"],
    (slots, { today }) => {
      const day = "mday" in slots ? slots.mday : slots.ord;
      return either(onDay(today.year, slots.month, day), 0.95);
    },
  ),
  ...rule(
    "weekday-month-day",
    [
      "on? <weekday> ,the? <mday> of? <month>",
      "on|last? <weekday> ,<month> the? <mday>",
      "on? <month> <mday> ,a? <weekday>",
    ],
    ({ month, mday }, reference) => either(monthDayNear(month, mday, reference), 0.97),
  ),
  ...rule(
    "weekday-month-day-year",
    ["on? <weekday> ,the? <mday> of? <month> ,<year>", "on? <weekday> ,<month> the? <mday> ,<year>"],
    ({ month, mday, year }) => either(onDay(year, month, mday), 0.98),
  ),
  ...rule("weekday-day", ["on? <weekday> ,the? <ord>", "on? <weekday> the <mday>"], (slots, reference) => {
    const day = "mday" in slots ? slots.mday : slots.ord;
    return either(weekdayMonthDayNear(slots.weekday, day, reference), 0.9);
  }),
  ...rule(
    "day-of-month",
    ["on|around|about|for|by|since|until|before|after the <ord>"],
    ({ ord }, reference, place) => {
      const first = place.tokens[place.at]?.word ?? "";
      const placed =
        first === "since" || first === "until" || first === "before" || first === "after" || first === "by";
      if (!restsThere(place)) return undefined;
      const meaning = either(dayOfMonthNear(ord, reference), 0.75);
      if (meaning === undefined || !placed) return meaning;
      return { ...meaning, role: first === "since" || first === "after" ? "since" : "until" };
    },
  ),
  ...rule("day-of-the-month", ["on|around|about? the <ord> of the month"], ({ ord }, reference) =>
    either(dayOfMonthNear(ord, reference), 0.85),
  ),
  ...rule(
    "day-of-this-month",
    ["on|around|about? the? <ord> of? this month", "on|around? the <ord> day of this month"],
    ({ ord }, reference) => either(inMonth(unitAround(reference, "month", 0), ord), 0.95),
  ),
  ...rule("day-of-last-month", ["on|around|about? the? <ord> day? of? last month"], ({ ord }, reference) =>
    past(inMonth(unitAround(reference, "month", -1), ord), 0.95),
  ),
  ...rule("day-of-next-month", ["on|around|about? the? <ord> day? of? next month"], ({ ord }, reference) =>
    future(inMonth(unitAround(reference, "month", 1), ord), 0.95),
  ),
  ...rule(
    "days-of-month",
    [
      "from|between? the? <mday> to|and|or|through|until|- the? <mday2> of? <month>",
      "from|between? <month> the? <mday> to|and|or|through|until|- the? <mday2>",
    ],
    ({ mday, mday2, month }, reference, place) => {
      const last = monthDayNear(month, mday2, reference);
      const first = last && mday < mday2 ? onDay(last.from.year, month, mday) : undefined;
      return isOther(place) ? undefined : either(first && last && fromTo(first, last), 0.85);
    },
  ),
  ...rule(
    "days-of-month-year",
    [
      "from|between? the? <mday> to|and|through|until|- the? <mday2> of? <month> ,<year>",
      "from|between? <month> the? <mday> to|and|through|until|- the? <mday2> ,<year>",
    ],
    ({ mday, mday2, month, year }) => {
      const [first, last] = [onDay(year, month, mday), onDay(year, month, mday2)];
      return either(first && last && mday < mday2 ? fromTo(first, last) : undefined, 0.95);
    },
  ),
  ...rule("week-of-day", ["in|during? the? week of the <ord>"], ({ ord }, reference) => {
    const day = dayOfMonthNear(ord, reference);
    return either(day && derived(day, ({ from }) => weekOf(from)), 0.8);
  }),
  ...rule("weekday-number", ["on? <weekday> <mday>"], ({ weekday, mday }, reference, place) =>
    restsThere(place) ? either(weekdayMonthDayNear(weekday, mday, reference), 0.7) : undefined,
  ),
  ...rule("the-day", ["the <ord>"], ({ ord }, reference, place) => {
    const digits = /^\d/u.test(place.tokens[place.at + 1]?.raw ?? "");
    return digits && restsThere(place) ? either(dayOfMonthNear(ord, reference), 0.55) : undefined;
  }),
  ...rule("part-of-day", ["on? the <part> of the <ord>"], ({ ord }, reference, place) =>
    restsThere(place) ? either(dayOfMonthNear(ord, reference), 0.85) : undefined,
  ),
  ...rule("weekend-of-day", ["on|over? the? weekend of the <ord>"], ({ ord }, reference) => {
    const day = dayOfMonthNear(ord, reference);
    return either(day && derived(day, ({ from }) => weekendOf(from)), 0.8);
  }),
  ...rule(
    "days-near",
    ["from|between the <ord> to|and|through|until|- the? <ord2>"],
    ({ ord, ord2 }, reference) => {
      const last = dayOfMonthNear(ord2, reference);
      if (last === undefined) return undefined;
      const first = dayOfMonthNear(ord, { today: last.from, prefer: "past" });
      return either(first && fromTo(first, last), 0.7);
    },
  ),
  ...rule("last-day-of", ["on? the? very? last day of|in <when>"], ({ when }) =>
    when.grain === "month"
      ? either(
          derived(when, ({ last }) => dayOf(last)),
          0.93,
        )
      : undefined,
  ),
  ...rule("first-day-of", ["on? the? very? first day of|in <when>"], ({ when }) =>
    when.grain === "month"
      ? either(
          derived(when, ({ from }) => dayOf(from)),
          0.93,
        )
      : undefined,
  ),
  ...rule("nth-weekday", ["on? the? <ord> <weekday> of|in <when>"], ({ ord, weekday, when }) => {
    if (when.grain !== "month" || ord > 5) return undefined;
    const day = nthWeekday(when.from.year, when.from.month, weekday, ord);
    return day.month === when.from.month ? either(dayOf(day), 0.92) : undefined;
  }),
  ...rule("last-weekday-of", ["on? the? last <weekday> of|in <when>"], ({ weekday, when }) =>
    when.grain === "month"
      ? either(dayOf(nthWeekday(when.from.year, when.from.month, weekday, -1)), 0.92)
      : undefined,
  ),
  ...rule(
    "nth-weekday-of-month",
    ["on? the? <ord> <weekday> of the month"],
    ({ ord, weekday }, { today }) => {
      const day = nthWeekday(today.year, today.month, weekday, ord);
      return ord < 6 && day.month === today.month ? either(dayOf(day), 0.75) : undefined;
    },
  ),
];
