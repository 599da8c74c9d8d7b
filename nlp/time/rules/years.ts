import { about, dayOf, monthOf, type Period, spanOf, yearOf } from "../period.ts";
import { unitAround } from "../resolve.ts";
import { rule, wordAfter, wordBefore } from "../rule.ts";

const MODEL_BEFORE = new Set([
  "my",
  "our",
  "the",
  "a",
  "his",
  "her",
  "their",
  "your",
  "old",
  "an",
  "this",
  "that",
]);
const found = (period: Period, direction: "past" | "future" | "either", sure: number) => ({
  period,
  direction,
  sure,
});
/** What is counted in the thousands, or comes in years of make. */
const COUNTED = new Set(
  "miles mile km ks kms psi lb lbs pounds watts watt rpm feet ft bucks dollars btu model trailer rig camper van truck caravan motorhome coach hours mah amp amps".split(
    " ",
  ),
);

export const YEARS_RULES = [
  ...rule(
    "year",
    [
      "in|during|since|until|by|before|after|from|around|about|circa|of <year>",
      "back in <loose>",
      "in the year <year>",
      "the year <year>",
      "<year>",
    ],
    (slots, _reference, place) => {
      const first = place.tokens[place.at]?.word ?? "";
      if (place.next - place.at === 1 && MODEL_BEFORE.has(wordBefore(place))) return undefined;
      if (
        COUNTED.has(wordAfter(place)) ||
        ["since", "until", "by", "before", "after", "from", "of"].includes(first)
      )
        return undefined;
      const year = "year" in slots ? slots.year : slots.loose;
      const alone = place.tokens[place.at]?.raw.match(/^\d|^twenty|^nineteen|^two$/u) !== null;
      const ends =
        place.tokens[place.next] === undefined ||
        ["stop", "comma"].includes(place.tokens[place.next]?.gap ?? "stop");
      if (
        alone &&
        !ends &&
        ![
          "since",
          "until",
          "by",
          "before",
          "after",
          "from",
          "of",
          "in",
          "to",
          "between",
          "and",
          "or",
          "till",
        ].includes(wordBefore(place))
      )
        return undefined;
      return found(yearOf(year), "either", alone ? 0.6 : 0.95);
    },
  ),
  ...rule("short-year", ["in <loose>"], ({ loose }, _reference, place) => {
    const token = place.tokens[place.next - 1];
    const apostrophe = token !== undefined && token.end - token.start === 3 && /^\d\d$/u.test(token.raw);
    return apostrophe ? found(yearOf(loose), "either", 0.95) : undefined;
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
    (_, { today }) => found(yearOf(today.year), "either", 0.95),
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
    (_, { today }) => found(yearOf(today.year - 1), "past", 0.95),
  ),
  ...rule("next-year", ["next year", "in? the new year"], (_, { today, prefer }, place) =>
    prefer === "past" &&
    place.tokens[place.next - 1]?.word === "year" &&
    place.tokens[place.next - 2]?.word === "new"
      ? undefined
      : found(yearOf(today.year + 1), "future", 0.9),
  ),
  ...rule("year-before-last", ["the? year before last"], (_, { today }) =>
    found(yearOf(today.year - 2), "past", 0.97),
  ),
  ...rule(
    "this-time-last-year",
    ["this time last year", "around? this time last year", "a year ago now"],
    (_, { today }) => found(about(monthOf(today.subtract({ years: 1 }))), "past", 0.8),
  ),
  ...rule("unit-before-last", ["the? <unit> before last"], ({ unit }, reference) =>
    unit === "week" || unit === "month" ? found(unitAround(reference, unit, -2), "past", 0.95) : undefined,
  ),
  ...rule(
    "last-unit",
    ["sometime|late|early? last|previous <unit>", "sometime|late|early? this past <unit>"],
    ({ unit }, reference) =>
      unit === "week" || unit === "month" || unit === "year" || unit === "fortnight"
        ? found(unitAround(reference, unit, -1), "past", 0.92)
        : undefined,
  ),
  ...rule(
    "this-unit",
    ["earlier|later|late|early|sometime? this <unit>", "so far this <unit>", "all this? <unit>"],
    ({ unit }, reference) =>
      unit === "week" || unit === "month" || unit === "year"
        ? found(unitAround(reference, unit, 0), "either", 0.9)
        : undefined,
  ),
  ...rule(
    "next-unit",
    ["sometime|early|late? next <unit>", "sometime|early|late? the coming <unit>"],
    ({ unit }, reference) =>
      unit === "week" || unit === "month" || unit === "year"
        ? found(unitAround(reference, unit, 1), "future", 0.92)
        : undefined,
  ),
  ...rule("past-unit", ["in|over|during the last|past <unit>", "the past <unit>"], ({ unit }, { today }) => {
    if (unit === "hour" || unit === "minute" || unit === "fortnight") return undefined;
    const from = today.subtract({
      days: unit === "week" ? 7 : unit === "day" ? 1 : 0,
      months: unit === "month" ? 1 : 0,
      years: unit === "year" ? 1 : 0,
    });
    return found(spanOf(dayOf(from), dayOf(today)), "past", 0.75);
  }),
  ...rule(
    "early-year",
    ["early|late|mid <year>", "in early|late|mid <year>", "early|late in <year>"],
    ({ year }) => found(yearOf(year), "either", 0.9),
  ),
];
