import { MONTHS } from "../lexicon.ts";
import { fromTo, monthOf, type Period } from "../period.ts";
import type { Reference } from "../reference.ts";
import { lastWhole, monthIn, nearest, nextWhole } from "../resolve.ts";
import { type Direction, type Meaning, type Place, rule, wordAfter, wordBefore } from "../rule.ts";
import { isApostropheYear } from "../slots.ts";

/** Before these, "may" is the month. */
const LEADS = new Set(
  "in of since until by during through around about before after and or to from between early late mid till last this next - / every back next".split(
    " ",
  ),
);
const MARCH_ON = new Set("on in up down off over through out".split(" "));
/** Short forms that are also other words. */
const SHORT = new Set(["mar", "jan", "dec", "sep"]);

/** Another month follows: "may to june". */
const rangesOn = ({ tokens, at }: Place): boolean =>
  ["-", "/", "to", "through", "or", "and"].includes(tokens[at + 1]?.word ?? "") &&
  MONTHS.has(tokens[at + 2]?.word ?? "");

/** "may" and "march" are months only where the words around say so. */
const isMonth = (place: Place): boolean => {
  const token = place.tokens[place.at];
  if (token === undefined) return false;
  const led = LEADS.has(wordBefore(place));
  if (token.raw === "may") return led || rangesOn(place) || (token.capital && token.gap === "space");
  if (token.raw === "march") return led || !MARCH_ON.has(wordAfter(place));
  return !SHORT.has(token.raw) || led || token.capital;
};

const found = (period: Period | undefined, direction: Direction, sure = 0.95): Meaning | undefined =>
  period && { period, direction, sure };
const near = (month: number, reference: Reference): Period => nearest(reference, monthIn(month));

/** "Last September" said in October is not last month but the September before. */
const lastNamed = (month: number, { today }: Reference): Period => {
  const last = lastWhole(today, monthIn(month));
  const justOver = last.from.add({ months: 1 }).month === today.month && last.from.year >= today.year - 1;
  return justOver && today.since(last.last).days < 31 ? monthOf(last.from.subtract({ years: 1 })) : last;
};

export const MONTH_RULES = [
  ...rule(
    "month",
    ["in|during|through|around? <month>", "back in|around <month>", "<month>"],
    ({ month }, reference, place) =>
      isMonth({ ...place, at: place.next - 1 }) ? found(near(month, reference), "either", 0.9) : undefined,
  ),
  ...rule(
    "month-year",
    [
      "in? <month> ,of? <year>",
      "in? <month> -|/ <year>",
      "in? <month> the? year <year>",
      "in? <month> in <year>",
    ],
    ({ month, year }) => found(monthIn(month)(year), "either", 0.97),
  ),
  ...rule("month-short-year", ["in? <month> of <loose>"], ({ month, loose }) =>
    found(monthIn(month)(loose), "either", 0.97),
  ),
  ...rule("month-apostrophe-year", ["in? <month> <loose>"], ({ month, loose }, _reference, place) =>
    isApostropheYear(place.tokens[place.next - 1]) ? found(monthIn(month)(loose), "either", 0.97) : undefined,
  ),
  ...rule(
    "last-month-name",
    ["in|back|since? last|past|previous <month>", "back? in last <month>"],
    ({ month }, reference) => found(lastNamed(month, reference), "past", 0.88),
  ),
  ...rule("past-month-name", ["back? in? this past|last <month>"], ({ month }, { today }) =>
    found(lastWhole(today, monthIn(month)), "past", 0.92),
  ),
  ...rule(
    "month-this-year",
    ["in? this <month>", "in? <month> of? this year", "this year in <month>"],
    ({ month }, { today }) => found(monthIn(month)(today.year), "either", 0.92),
  ),
  ...rule(
    "next-month-name",
    ["in? next|coming|upcoming <month>", "this coming|upcoming|next <month>"],
    ({ month }, { today }) => found(nextWhole(today, monthIn(month)), "future", 0.92),
  ),
  ...rule(
    "month-next-year",
    ["in? <month> of? next year", "next year ,in? <month>"],
    ({ month }, { today }) => found(monthIn(month)(today.year + 1), "future"),
  ),
  ...rule(
    "month-last-year",
    [
      "in? <month> of? last year",
      "last year ,back? in|around|about <month>",
      "last year <month>",
      "in? <month> a year ago",
    ],
    ({ month }, { today }) => found(monthIn(month)(today.year - 1), "past"),
  ),
  ...rule(
    "month-year-before-last",
    ["in? <month> of? the? year before last", "the year before last in? <month>"],
    ({ month }, { today }) => found(monthIn(month)(today.year - 2), "past"),
  ),
  ...rule("month-years-ago", ["in? <month> <n> years|year ago|back"], ({ month, n }, { today }) =>
    Number.isInteger(n.low) ? found(monthIn(month)(today.year - n.low), "past", 0.92) : undefined,
  ),
  ...rule("month-before-last", ["the? <month> before last"], ({ month }, { today }) =>
    found(monthOf(lastWhole(today, monthIn(month)).from.subtract({ years: 1 })), "past", 0.92),
  ),
  ...rule("months-named-ago", ["<n> <months> ago|back"], ({ n, months }, { today }) =>
    Number.isInteger(n.low)
      ? found(monthOf(lastWhole(today, monthIn(months)).from.subtract({ years: n.low - 1 })), "past", 0.9)
      : undefined,
  ),
  ...rule("month-or-month", ["in? <month> or|-|/ <month2>"], ({ month, month2 }, reference, place) =>
    isMonth({ ...place, at: place.next - 3 })
      ? found(fromTo(near(month, reference), near(month2, reference)), "either", 0.85)
      : undefined,
  ),
  ...rule(
    "month-or-month-year",
    ["in? <month> or|and|-|/|to|through <month2> ,of? <year>"],
    ({ month, month2, year }) =>
      found(
        fromTo({ ...monthIn(month)(month <= month2 ? year : year - 1) }, monthIn(month2)(year)),
        "either",
        0.92,
      ),
  ),
];
