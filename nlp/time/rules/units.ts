import type { TimeUnit } from "../lexicon.ts";
import { either, future, past } from "../meaning.ts";
import { about, dayOf, spanOf, yearOf } from "../period.ts";
import { unitAround } from "../resolve.ts";
import { rule } from "../rule.ts";

/** Units of the calendar that can be last, this or next. */
export const isCalendarUnit = (unit: TimeUnit): unit is "week" | "month" | "year" =>
  unit === "week" || unit === "month" || unit === "year";

export const UNIT_RULES = [
  ...rule("unit-before-last", ["the? <unit> before last"], ({ unit }, reference) =>
    unit === "week" || unit === "month" ? past(unitAround(reference, unit, -2), 0.95) : undefined,
  ),
  ...rule(
    "last-unit",
    [
      "sometime|late|early? last|previous <unit>",
      "sometime|late|early? this past <unit>",
      "in|over|during? the <unit> just? gone|past",
    ],
    ({ unit }, reference) =>
      isCalendarUnit(unit) || unit === "fortnight" ? past(unitAround(reference, unit, -1), 0.92) : undefined,
  ),
  ...rule(
    "this-unit",
    ["earlier|later|late|early|sometime? this <unit>", "so far this <unit>", "all this? <unit>"],
    ({ unit }, reference) => (isCalendarUnit(unit) ? either(unitAround(reference, unit, 0), 0.9) : undefined),
  ),
  ...rule("unit-after-next", ["the? <unit> after the? next"], ({ unit }, reference) =>
    isCalendarUnit(unit) ? future(unitAround(reference, unit, 2), 0.9) : undefined,
  ),
  ...rule(
    "next-unit",
    ["sometime|early|late? next <unit>", "sometime|early|late? the coming <unit>"],
    ({ unit }, reference) =>
      isCalendarUnit(unit) ? future(unitAround(reference, unit, 1), 0.92) : undefined,
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
];

/** "Season" alone is the camping season, about a year's. */
export const CAMPING_RULES = [
  ...rule("last-camping-season", ["last|previous season", "this past season"], (_, { today }) =>
    past(about(yearOf(today.year - 1)), 0.5),
  ),
  ...rule("this-camping-season", ["this season", "so far this season"], (_, { today }) =>
    either(about(yearOf(today.year)), 0.5),
  ),
  ...rule(
    "edge-of-camping-season",
    ["at|in|near|toward|towards? the? very? start|beginning|end|middle of the|this|our season"],
    (_, { today }) => either(about(yearOf(today.year)), 0.5),
  ),
  ...rule("camping-seasons-ago", ["<n> seasons ago|back"], ({ n }, { today }) =>
    Number.isInteger(n.low) ? past(about(yearOf(today.year - n.low)), 0.6) : undefined,
  ),
  ...rule("camping-season-before-last", ["the? season before last"], (_, { today }) =>
    past(about(yearOf(today.year - 2)), 0.6),
  ),
];
