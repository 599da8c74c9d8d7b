import { isAmong } from "../context.ts";
import { either, future, past } from "../meaning.ts";
import { isYear, restsThere } from "../meant.ts";
import { about, dayOf, monthOf, spanOf, yearOf } from "../period.ts";
import { unitAround } from "../resolve.ts";
import { rule, wordAfter, wordBefore } from "../rule.ts";
import { isApostropheYear } from "../slots.ts";

export const YEAR_RULES = [
  ...rule(
    "year",
    ["in|during <year>", "back in <loose>", "in? the year <year>", "back in the year <year>"],
    (slots, _reference, place) => {
      const year = "year" in slots ? slots.year : slots.loose;
      if (isAmong("counted", wordAfter(place))) return undefined;
      return either(yearOf(year), isAmong("making", wordBefore(place)) ? 0.3 : 0.95);
    },
  ),
  ...rule("years", ["<year> -|to|through|until|or|and <year2>"], ({ year, year2 }, _reference, place) =>
    year < year2 && !isAmong("counted", wordAfter(place))
      ? either(spanOf(yearOf(year), yearOf(year2)), 0.8)
      : undefined,
  ),
  ...rule("year-alone", ["<year>"], ({ year }, _reference, place) => {
    return isYear(place) ? either(yearOf(year), 0.6) : undefined;
  }),
  ...rule("short-year", ["in <loose>"], ({ loose }, _reference, place) => {
    const sureYear = isApostropheYear(place.tokens[place.next - 1]) || place.next - place.at > 2;
    if (place.tokens[place.at + 1]?.raw === "oh") return either(yearOf(loose), 0.9);
    return restsThere(place) ? either(yearOf(loose), sureYear ? 0.95 : 0.6) : undefined;
  }),
  ...rule(
    "this-year",
    [
      "this year",
      "in this year",
      "so far this year",
      "all this? year",
      "this calendar year",
      "the whole year",
      "year to date",
    ],
    (_, { today }) => either(yearOf(today.year), 0.95),
  ),
  ...rule(
    "last-year",
    [
      "last year",
      "in last year",
      "back? in the last year",
      "late|early|sometime last year",
      "the? previous year",
    ],
    (_, { today }) => past(yearOf(today.year - 1), 0.95),
  ),
  ...rule("next-year", ["next year", "in? the new year"], (_, { today, prefer }, place) =>
    prefer === "past" &&
    place.tokens[place.next - 1]?.word === "year" &&
    place.tokens[place.next - 2]?.word === "new"
      ? undefined
      : future(yearOf(today.year + 1), 0.9),
  ),
  ...rule("year-before-last", ["the? year before last"], (_, { today }) =>
    past(yearOf(today.year - 2), 0.97),
  ),
  ...rule(
    "this-time-last-year",
    ["this time last year", "around? the? same time last year", "a year ago now"],
    (_, { today }) => past(about(monthOf(today.subtract({ years: 1 }))), 0.8),
  ),
  ...rule("last-camping-season", ["last|previous season", "this past season"], (_, { today }) =>
    past(about(yearOf(today.year - 1)), 0.5),
  ),
  ...rule("this-camping-season", ["this season", "so far this season"], (_, { today }) =>
    either(about(yearOf(today.year)), 0.5),
  ),
  ...rule("camping-seasons-ago", ["<n> seasons ago|back"], ({ n }, { today }) =>
    Number.isInteger(n.low) ? past(about(yearOf(today.year - n.low)), 0.6) : undefined,
  ),
  ...rule("camping-season-before-last", ["the? season before last"], (_, { today }) =>
    past(about(yearOf(today.year - 2)), 0.6),
  ),
  ...rule("unit-before-last", ["the? <unit> before last"], ({ unit }, reference) =>
    unit === "week" || unit === "month" ? past(unitAround(reference, unit, -2), 0.95) : undefined,
  ),
  ...rule(
    "last-unit",
    ["sometime|late|early? last|previous <unit>", "sometime|late|early? this past <unit>"],
    ({ unit }, reference) =>
      unit === "week" || unit === "month" || unit === "year" || unit === "fortnight"
        ? past(unitAround(reference, unit, -1), 0.92)
        : undefined,
  ),
  ...rule(
    "this-unit",
    ["earlier|later|late|early|sometime? this <unit>", "so far this <unit>", "all this? <unit>"],
    ({ unit }, reference) =>
      unit === "week" || unit === "month" || unit === "year"
        ? either(unitAround(reference, unit, 0), 0.9)
        : undefined,
  ),
  ...rule("unit-after-next", ["the? <unit> after the? next"], ({ unit }, reference) =>
    unit === "week" || unit === "month" || unit === "year"
      ? future(unitAround(reference, unit, 2), 0.9)
      : undefined,
  ),
  ...rule(
    "next-unit",
    ["sometime|early|late? next <unit>", "sometime|early|late? the coming <unit>"],
    ({ unit }, reference) =>
      unit === "week" || unit === "month" || unit === "year"
        ? future(unitAround(reference, unit, 1), 0.92)
        : undefined,
  ),
  ...rule(
    "past-unit",
    ["in|over|during|within|inside the last|past <unit>", "the past <unit>"],
    ({ unit }, { today }) => {
      if (unit === "hour" || unit === "minute" || unit === "fortnight") return undefined;
      const from = today.subtract({
        days: unit === "week" ? 7 : unit === "day" ? 1 : 0,
        months: unit === "month" ? 1 : 0,
        years: unit === "year" ? 1 : 0,
      });
      return past(spanOf(dayOf(from), dayOf(today)), 0.75);
    },
  ),
  ...rule(
    "early-year",
    ["early|late|mid <year>", "in early|late|mid <year>", "early|late in <year>"],
    ({ year }) => either(yearOf(year), 0.9),
  ),
];
