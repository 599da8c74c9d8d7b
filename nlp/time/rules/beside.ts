import type { Length } from "../length.ts";
import type { TimeUnit } from "../lexicon.ts";
import { either } from "../meaning.ts";
import { dayOf, monthOf, type Period, settled, weekOf, yearOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { nearest, weekdayAfter, weekdayBefore, weekendOf } from "../resolve.ts";
import { type Meaning, type Place, rule } from "../rule.ts";
import { shifted } from "../shift.ts";

/** The whole unit just before (-1) or after (1) a period. */
export const beside = (period: Period, unit: TimeUnit, side: -1 | 1): Period | undefined => {
  const edge = side < 0 ? period.from : period.last;
  if (unit === "day") return dayOf(edge.add({ days: side }));
  if (unit === "week") return weekOf(edge.add({ days: 7 * side }));
  if (unit === "month") return monthOf(edge.with({ day: 1 }).add({ months: side }));
  if (unit === "year") return yearOf(edge.year + side);
  return undefined;
};

/** A length before or after a period; hours make no other day. */
export const offset = (length: Length, when: Period, side: -1 | 1): Period | undefined =>
  length.unit === "hour" || length.unit === "minute"
    ? undefined
    : shifted(side < 0 ? when.from : when.last, length, side);

export const weekdayBeside = (period: Period, weekday: number, side: -1 | 1): Period =>
  dayOf(side < 0 ? weekdayBefore(period.from, weekday) : weekdayAfter(period.last, weekday));

/** The nearest whole weekend on that side. */
export const weekendBeside = (period: Period, side: -1 | 1): Period => {
  const saturday =
    side < 0 ? weekdayBefore(period.from.subtract({ days: 1 }), 6) : weekdayAfter(period.last, 6);
  return weekendOf(saturday);
};

/** Whether the phrase says "after" among its first words. */
const side = ({ tokens, at }: Place): -1 | 1 =>
  tokens.slice(at, at + 4).some(({ word }) => word === "after" || word === "following") ? 1 : -1;

/** The period asked for, or nothing when the unit makes no period of its own. */
const besides = (
  when: Period,
  reference: Reference,
  make: (period: Period) => Period | undefined,
  sure = 0.9,
): Meaning | undefined =>
  make(when) && {
    period: settled(when, reference, (period) => make(period) ?? period),
    direction: "either",
    sure,
  };

export const BESIDE_RULES = [
  ...rule(
    "beside",
    ["in|over|during? the? <unit> before|after|following <when>", "the? <unit> prior to <when>"],
    ({ unit, when }, reference, place) =>
      besides(when, reference, (period) => beside(period, unit, side(place))),
  ),
  ...rule(
    "weekend-beside",
    ["on|over? the? weekend before|after|following <when>"],
    ({ when }, reference, place) =>
      besides(when, reference, (period) => weekendBeside(period, side(place)), 0.85),
  ),
  ...rule(
    "weekday-beside",
    ["on? the? <weekday> before|after|following <when>"],
    ({ weekday, when }, reference, place) =>
      besides(when, reference, (period) => weekdayBeside(period, weekday, side(place))),
  ),
  ...rule(
    "nth-weekday-after",
    ["on? the? <ord> <weekday> after <when>"],
    ({ ord, weekday, when }, reference) =>
      besides(when, reference, (period) =>
        dayOf(weekdayAfter(period.last, weekday).add({ days: 7 * (ord - 1) })),
      ),
  ),
  ...rule("day-of", ["on? the? day of <holiday>"], ({ holiday }, reference) =>
    either(
      nearest(reference, (year) => dayOf(holiday.on(year))),
      0.9,
    ),
  ),
  ...rule(
    "offset-before",
    ["<length> before <when>", "<length> ahead of <when>", "<length> prior to <when>"],
    ({ length, when }, reference) => besides(when, reference, (period) => offset(length, period, -1)),
  ),
  ...rule(
    "offset-from",
    ["<length> from <when>", "<length> on from <when>"],
    ({ length, when }, { today }) => {
      const base = when.recurs?.(today, 1) ?? when;
      return either(offset(length, base, 1), 0.8);
    },
  ),
  ...rule("offset-after", ["<length> after|following|past <when>"], ({ length, when }, reference) =>
    besides(when, reference, (period) => offset(length, period, 1)),
  ),
  ...rule("weekend-of", ["on|over? the? weekend of <when>"], ({ when }, reference) =>
    when.grain === "day" ? besides(when, reference, ({ from }) => weekendOf(from), 0.85) : undefined,
  ),
  ...rule(
    "week-of",
    ["in|during? the? week|wk of|beginning|starting|commencing|ending on? <when>"],
    ({ when }, reference) =>
      when.grain === "day" ? besides(when, reference, ({ from }) => weekOf(from), 0.85) : undefined,
  ),
];
