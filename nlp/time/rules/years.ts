import { isAmong } from "../context.ts";
import { either, future, past } from "../meaning.ts";
import { isYear, restsThere } from "../meant.ts";
import { about, monthOf, spanOf, yearOf } from "../period.ts";
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
  ...rule(
    "early-year",
    ["early|late|mid <year>", "in early|late|mid <year>", "early|late in <year>"],
    ({ year }) => either(yearOf(year), 0.9),
  ),
];
