import { isAmong } from "../context.ts";
import { either, future, past } from "../meaning.ts";
import { isYear, restsThere } from "../meant.ts";
import { about, dayOf, monthOf, type Period, spanOf, yearOf } from "../period.ts";
import { rule, wordAfter, wordBefore } from "../rule.ts";
import { isApostropheYear } from "../slots.ts";

const LONGEST_SPAN = 10;
const DECADES: ReadonlyMap<string, number> = new Map([
  ["seventies", 1970],
  ["eighties", 1980],
  ["nineties", 1990],
  ["noughties", 2000],
]);

const decade = (first: number): Period => spanOf(yearOf(first), yearOf(first + 9));

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
  ...rule("short-years", ["in <loose> or|- <loose2>", "<year> or|- <loose2>"], (slots, _reference, place) => {
    const first = "year" in slots ? slots.year : slots.loose;
    const { loose2 } = slots;
    return first < loose2 && loose2 - first < LONGEST_SPAN && restsThere(place)
      ? either(spanOf(yearOf(first), yearOf(loose2)), 0.8)
      : undefined;
  }),
  ...rule(
    "decade",
    ["in|during? the? early|mid|late? <year> s", "in|during|back the early|mid|late? <loose> s"],
    (slots, _reference, { tokens, next }) => {
      const first = "year" in slots ? slots.year : slots.loose;
      return first % 10 === 0 && tokens[next - 1]?.gap === "none" ? either(decade(first), 0.85) : undefined;
    },
  ),
  ...rule(
    "named-decade",
    ["in|during|back the early|mid|late? nineties|eighties|seventies|noughties"],
    (_, _reference, { tokens, next }) => {
      const first = DECADES.get(tokens[next - 1]?.raw ?? "");
      return either(first === undefined ? undefined : decade(first), 0.85);
    },
  ),
  /** "2022: new fabric on the awning", "twenty four was a bad year". */
  ...rule(
    "year-over",
    [
      "<year> :",
      "<loose> was|were a|an|the? good|bad|rough|hard|quiet|busy|big|slow|dry|wet|lean|expensive? year",
    ],
    (slots, { today }, place) => {
      const year = "year" in slots ? slots.year : slots.loose;
      const opens = place.tokens[place.at]?.gap !== "none";
      return opens && year <= today.year ? either(yearOf(year), 0.7) : undefined;
    },
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
  ...rule("this-time-last-week", ["around|about? this time last week"], (_, { today }) =>
    past(dayOf(today.subtract({ days: 7 })), 0.85),
  ),
  ...rule(
    "early-year",
    ["early|late|mid <year>", "in early|late|mid <year>", "early|late in <year>"],
    ({ year }) => either(yearOf(year), 0.9),
  ),
];
