import { either, future, past } from "../meaning.ts";
import { isMonth } from "../meant.ts";
import { fromTo, monthOf, type Period } from "../period.ts";
import type { Reference } from "../reference.ts";
import { lastWhole, monthIn, nearest, nextWhole } from "../resolve.ts";
import { rule } from "../rule.ts";
import { isApostropheYear } from "../slots.ts";

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
    ["in|during|through? <month>", "back in <month>", "<month>"],
    ({ month }, reference, place) =>
      isMonth({ ...place, at: place.next - 1 }) ? either(near(month, reference), 0.9) : undefined,
  ),
  ...rule(
    "month-year",
    [
      "in? <month> ,of? <year>",
      "in? <month> -|/ <year>",
      "in? <year> :|-? <month>",
      "in? <month> the? year <year>",
      "in? <month> in <year>",
    ],
    ({ month, year }) => either(monthIn(month)(year), 0.97),
  ),
  /** "In June that year": of the year told before. */
  ...rule(
    "month-that-year",
    ["in? <month> of? that year", "in? <month> of? the|that? same year", "in? <month> same year"],
    ({ month }, _reference, { before }) => past(before && monthIn(month)(before.from.year), 0.9),
  ),
  ...rule("month-short-year", ["in? <month> of <loose>"], ({ month, loose }) =>
    either(monthIn(month)(loose), 0.97),
  ),
  ...rule("month-apostrophe-year", ["in? <month> <loose>"], ({ month, loose }, _reference, place) =>
    isApostropheYear(place.tokens[place.next - 1]) ? either(monthIn(month)(loose), 0.97) : undefined,
  ),
  ...rule(
    "last-month-name",
    ["in|back|since? last|past|previous <month>", "back? in last <month>"],
    ({ month }, reference) => past(lastNamed(month, reference), 0.88),
  ),
  ...rule("past-month-name", ["back? in? this past|last <month>"], ({ month }, { today }) =>
    past(lastWhole(today, monthIn(month)), 0.92),
  ),
  ...rule(
    "month-this-year",
    ["in? this <month>", "in? <month> of? this year", "this year in <month>"],
    ({ month }, { today }) => either(monthIn(month)(today.year), 0.92),
  ),
  ...rule(
    "next-month-name",
    ["in? next|coming|upcoming <month>", "this coming|upcoming|next <month>"],
    ({ month }, { today }) => future(nextWhole(today, monthIn(month)), 0.92),
  ),
  ...rule(
    "month-next-year",
    ["in? <month> of? next year", "next year ,in? <month>"],
    ({ month }, { today }) => future(monthIn(month)(today.year + 1), 0.95),
  ),
  ...rule(
    "month-last-year",
    [
      "in? <month> of? last year",
      "last year ,back? in|around|about <month>",
      "last year <month>",
      "in? <month> a year ago",
    ],
    ({ month }, { today }) => past(monthIn(month)(today.year - 1), 0.95),
  ),
  ...rule(
    "month-year-before-last",
    ["in? <month> of? the? year before last", "the year before last in? <month>"],
    ({ month }, { today }) => past(monthIn(month)(today.year - 2), 0.95),
  ),
  ...rule("month-years-ago", ["in? <month> <n> years|year ago|back"], ({ month, n }, { today }) =>
    Number.isInteger(n.low) ? past(monthIn(month)(today.year - n.low), 0.92) : undefined,
  ),
  ...rule("year-last-month", ["<length> last <month>"], ({ length, month }, { today }) =>
    length.unit === "year" && Number.isInteger(length.low)
      ? past(monthOf(lastWhole(today, monthIn(month)).from.subtract({ years: length.low })), 0.8)
      : undefined,
  ),
  ...rule("month-before-last", ["the? <month> before last"], ({ month }, { today }) =>
    past(monthOf(lastWhole(today, monthIn(month)).from.subtract({ years: 1 })), 0.92),
  ),
  ...rule("months-named-ago", ["<n> <months> ago|back"], ({ n, months }, { today }) =>
    Number.isInteger(n.low)
      ? past(monthOf(lastWhole(today, monthIn(months)).from.subtract({ years: n.low - 1 })), 0.9)
      : undefined,
  ),
  ...rule("month-or-month", ["in? <month> or|-|/ <month2>"], ({ month, month2 }, reference, place) =>
    isMonth({ ...place, at: place.next - 3 })
      ? either(fromTo(near(month, reference), near(month2, reference)), 0.85)
      : undefined,
  ),
  ...rule(
    "month-or-month-last-year",
    ["in? <month> or|and|-|/|to <month2> of? last year"],
    ({ month, month2 }, { today }) =>
      past(
        fromTo(monthIn(month)(today.year - (month <= month2 ? 1 : 2)), monthIn(month2)(today.year - 1)),
        0.92,
      ),
  ),
  ...rule("month-just-gone", ["<month> just? gone|past"], ({ month }, { today }) =>
    past(lastWhole(today, monthIn(month)), 0.9),
  ),
  ...rule(
    "month-or-month-year",
    ["in? <month> or|and|-|/|to|through <month2> ,of? <year>"],
    ({ month, month2, year }) =>
      either(fromTo(monthIn(month)(month <= month2 ? year : year - 1), monthIn(month2)(year)), 0.92),
  ),
];
