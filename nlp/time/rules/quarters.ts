import { Temporal } from "temporal-polyfill";
import { either, future, past } from "../meaning.ts";
import { monthOf, type Period, spanOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { rule } from "../rule.ts";

/** Quarters of the calendar year, 0 the first; others run on into the years around. */
const quarter = (year: number, index: number): Period => {
  const first = new Temporal.PlainDate(year, 1, 1).add({ months: 3 * index });
  return spanOf(monthOf(first), monthOf(first.add({ months: 2 })));
};
const around = ({ today }: Reference, shift: number): Period =>
  quarter(today.year, Math.floor((today.month - 1) / 3) + shift);

/** Only with a year, or as this, last and next: "a quarter turn" is none. */
export const QUARTER_RULES = [
  ...rule("quarter-year", ["in? the? <ord> quarter of? <year>"], ({ ord, year }) =>
    ord <= 4 ? either(quarter(year, ord - 1), 0.9) : undefined,
  ),
  ...rule(
    "short-quarter-year",
    ["in? q <mday> ,of? <year>", "in? <year> q <mday>", "in? q <mday> of? last|this year"],
    (slots, { today }, { tokens, next }) => {
      const back = tokens[next - 2]?.word === "last" ? 1 : 0;
      const year = "year" in slots ? slots.year : today.year - back;
      return slots.mday <= 4 ? either(quarter(year, slots.mday - 1), 0.9) : undefined;
    },
  ),
  ...rule("last-quarter", ["last|previous quarter"], (_, reference) => past(around(reference, -1), 0.7)),
  ...rule("this-quarter", ["this quarter"], (_, reference) => either(around(reference, 0), 0.7)),
  ...rule("next-quarter", ["next|coming quarter"], (_, reference) => future(around(reference, 1), 0.7)),
];
