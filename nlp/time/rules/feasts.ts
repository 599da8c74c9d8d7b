import { Temporal } from "temporal-polyfill";
import { isAmong } from "../context.ts";
import { easterSunday, type Holiday } from "../holidays.ts";
import { either, future, past } from "../meaning.ts";
import { isFeast, restsThere } from "../meant.ts";
import { about, dayOf, derived, type Period, spanOf, weekOf } from "../period.ts";
import { lastWhole, nearest, nextWhole } from "../resolve.ts";
import { type Place, rule, wordAfter } from "../rule.ts";

const feast =
  (holiday: Holiday) =>
  (year: number): Period =>
    dayOf(holiday.on(year));

/** Days before and after a holiday, Monday first: to the weekend that it makes long. */
const REACH = [
  [2, 0],
  [3, 0],
  [0, 4],
  [0, 3],
  [0, 2],
  [0, 1],
  [1, 0],
] as const;
const EASTER_REACH = [2, 1] as const;

/** The days off around a holiday: Saturday to a Monday, Thursday to Sunday, Good Friday to Easter Monday. */
export const weekendAround = ({ from }: Period): Period => {
  const easter = from.equals(easterSunday(from.year));
  const [before, after] = easter ? EASTER_REACH : (REACH[from.dayOfWeek - 1] ?? EASTER_REACH);
  return spanOf(dayOf(from.subtract({ days: before })), dayOf(from.add({ days: after })));
};

/** "May long weekend" is all of it. */
const named = (day: Period, { tokens, next }: Place): Period =>
  tokens[next - 1]?.word === "weekend" ? derived(day, weekendAround) : about(day);

/** Christmas to New Year. */
const holidays = (year: number): Period =>
  spanOf(dayOf(new Temporal.PlainDate(year, 12, 24)), dayOf(new Temporal.PlainDate(year + 1, 1, 1)));

const HALF_A_WEEK = 3;

export const FEAST_RULES = [
  ...rule(
    "holiday",
    ["on|at|over|during? the? <holiday>", "back at <holiday>", "on|at|over? this <holiday>"],
    ({ holiday }, reference, place) =>
      isFeast(place) ? either(named(nearest(reference, feast(holiday)), place), 0.9) : undefined,
  ),
  ...rule(
    "the-fourth",
    ["over|around the fourth", "over|around the 4 th", "the fourth weekend"],
    (_, reference, place) => {
      if (reference.region !== "US" || !restsThere(place)) return undefined;
      const day = nearest(reference, (year) => dayOf(new Temporal.PlainDate(year, 7, 4)));
      return either(place.tokens[place.next - 1]?.word === "weekend" ? weekendAround(day) : about(day), 0.7);
    },
  ),
  ...rule("holiday-for", ["for <holiday>"], ({ holiday }, reference, place) =>
    isFeast(place) ? either(about(nearest(reference, feast(holiday))), 0.5) : undefined,
  ),
  ...rule("ready-for-holiday", ["ready|set|right|fit|prepped for <holiday>"], ({ holiday }, { today }) =>
    future(about(nextWhole(today, feast(holiday))), 0.9),
  ),
  ...rule(
    "last-holiday",
    ["on|at|over? last|past <holiday>", "on|at|over? this past <holiday>"],
    ({ holiday }, reference) => past(about(lastWhole(reference.today, feast(holiday))), 0.92),
  ),
  ...rule("holiday-just-gone", ["<holiday> just? gone|past"], ({ holiday }, { today }) =>
    past(about(lastWhole(today, feast(holiday))), 0.9),
  ),
  ...rule("the-holidays", ["over|during|at|for the holidays"], (_, reference) =>
    either(about(nearest(reference, holidays)), 0.7),
  ),
  ...rule(
    "next-holiday",
    ["next <holiday>", "this? coming <holiday>", "come <holiday>"],
    ({ holiday }, reference) => future(about(nextWhole(reference.today, feast(holiday))), 0.92),
  ),
  ...rule(
    "holiday-year",
    ["on|at|over|for? <holiday> ,of? <loose>", "on|at? <holiday> in <year>"],
    (slots, _reference, place) => {
      const year = "loose" in slots ? slots.loose : slots.year;
      return isAmong("counted", wordAfter(place))
        ? undefined
        : either(about(feast(slots.holiday)(year)), 0.97);
    },
  ),
  ...rule(
    "holiday-last-year",
    ["on|at|over? <holiday> of? last year", "last year at|on <holiday>"],
    ({ holiday }, { today }) => past(about(feast(holiday)(today.year - 1)), 0.95),
  ),
  ...rule(
    "holiday-year-before-last",
    ["on|at|over? <holiday> ,of|in? the? year before last", "the year before last ,on|at|over? <holiday>"],
    ({ holiday }, { today }) => past(about(feast(holiday)(today.year - 2)), 0.95),
  ),
  ...rule(
    "holiday-years-ago",
    ["on|at|over? <holiday> <length> ago|back", "<length> ago ,on|at|over? <holiday>"],
    ({ holiday, length }, { today }) => {
      if (length.unit !== "year" || !Number.isInteger(length.low)) return undefined;
      const then = today.subtract({ years: length.low });
      const days = [-1, 0, 1].map((years) => holiday.on(then.year + years));
      const away = (day: Temporal.PlainDate) => Math.abs(day.since(then).days);
      return past(about(dayOf(days.reduce((best, day) => (away(day) < away(best) ? day : best)))), 0.93);
    },
  ),
  ...rule("holiday-before-last", ["the? <holiday> before last"], ({ holiday }, { today }) => {
    const last = lastWhole(today, feast(holiday));
    return past(about(feast(holiday)(last.from.year - 1)), 0.95);
  }),
  ...rule("holidays-ago", ["<n> <holidays> ago|back"], ({ n, holidays }, { today }) =>
    Number.isInteger(n.low)
      ? past(about(feast(holidays)(lastWhole(today, feast(holidays)).from.year - n.low + 1)), 0.9)
      : undefined,
  ),
  ...rule(
    "holiday-weekend",
    ["on|at|over|during|for? the? <holiday> long? weekend", "on|over? this past <holiday> weekend"],
    ({ holiday }, reference) => either(weekendAround(nearest(reference, feast(holiday))), 0.85),
  ),
  ...rule(
    "holiday-weekend-year",
    [
      "on|at|over|during|for? the? <holiday> long? weekend ,of|in? <year>",
      "on|at|over|during|for? the? <holiday> long? weekend of? last year",
      "on|at|over|during|for? the? <holiday> long? weekend <length> ago|back",
    ],
    (slots, { today }) => {
      if ("length" in slots && slots.length.unit !== "year") return undefined;
      const back = "length" in slots ? slots.length.low : 1;
      const year = "year" in slots ? slots.year : today.year - back;
      return Number.isInteger(year) ? either(weekendAround(feast(slots.holiday)(year)), 0.93) : undefined;
    },
  ),
  ...rule("holiday-weekday", ["on? the? <holiday> <weekday>"], ({ holiday, weekday }, reference) =>
    either(
      derived(nearest(reference, feast(holiday)), ({ from }) => {
        const ahead = (weekday - from.dayOfWeek + 7) % 7;
        return dayOf(from.add({ days: ahead > HALF_A_WEEK ? ahead - 7 : ahead }));
      }),
      0.85,
    ),
  ),
  ...rule(
    "holiday-week",
    ["in|over|during? the? <holiday> week", "in|over|during? the week of <holiday>"],
    ({ holiday }, reference) => either(weekOf(nearest(reference, feast(holiday)).from), 0.8),
  ),
];
