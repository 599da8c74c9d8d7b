import type { Temporal } from "temporal-polyfill";
import type { TimeUnit } from "../lexicon.ts";
import { isSeason } from "../meant.ts";
import { dayOf, isBefore, monthOf, type Period, seasonOf, weekOf, yearOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { monthIn, nearest, weekendOf } from "../resolve.ts";
import { type Meaning, type Place, rule } from "../rule.ts";
import { beside, offset, weekdayBeside, weekendBeside } from "./beside.ts";

const anchorOf = (place: Place, { today }: Reference): Period => place.before ?? dayOf(today);

/** Counted from a time told before; hardly anything where none was told. */
const counted = (period: Period | undefined, place: Place, sure = 0.85): Meaning | undefined =>
  period && {
    period,
    role: "after-that",
    direction: "either",
    sure: place.before === undefined ? 0.3 : sure,
  };

const nextSeason = (season: number, { last }: Period, { hemisphere }: Reference): Period | undefined =>
  [last.year - 1, last.year, last.year + 1]
    .map((year) => seasonOf(season, year, hemisphere))
    .find(({ from }) => isBefore(last, from));

const middleOf = ({ from, last }: Period): Temporal.PlainDate =>
  from.add({ days: Math.floor(last.since(from).days / 2) });

/** The season of that name that lies nearest to a time. */
const seasonAround = (season: number, period: Period, { hemisphere }: Reference): Period => {
  const there = middleOf(period);
  const away = (one: Period) => Math.abs(middleOf(one).since(there).days);
  const seasons = [-1, 0, 1].map((years) => seasonOf(season, there.year + years, hemisphere));
  return seasons.reduce((best, one) => (away(one) < away(best) ? one : best));
};

/** The last season of that name that was over before a time. */
const seasonBefore = (season: number, { from }: Period, { hemisphere }: Reference): Period | undefined =>
  [from.year, from.year - 1, from.year - 2]
    .map((year) => seasonOf(season, year, hemisphere))
    .find(({ last }) => isBefore(last, from));

const DAYS: Partial<Record<TimeUnit, number>> = { week: 7, month: 31, year: 366 };

/** The whole week, month or year in which a time lies; "that same week" of a month is no more than that month. */
const around = (period: Period, unit: TimeUnit): Period | undefined => {
  const { from, last } = period;
  if (last.since(from).days + 1 > (DAYS[unit] ?? 0)) return period;
  if (unit === "week") return weekOf(from);
  if (unit === "month") return monthOf(from);
  return unit === "year" ? yearOf(from.year) : undefined;
};

/** The same again, one round earlier: the summer before, the Friday before. */
const oneBefore = (period: Period, { hemisphere }: Reference): Period | undefined => {
  const { grain, from } = period;
  if (grain === "day") return dayOf(from.subtract({ days: 7 }));
  if (grain === "week") return weekOf(from.subtract({ days: 7 }));
  if (grain === "month") return monthOf(from.subtract({ years: 1 }));
  if (grain === "year") return yearOf(from.year - 1);
  return grain === "season"
    ? seasonOf(Number(period.written.slice(-2)), from.year - 1, hemisphere)
    : undefined;
};

/** "later that day", but not a bare "later day". */
const isSameDay = ({ tokens, at, next }: Place): boolean =>
  tokens.slice(at, next).some(({ word }) => word === "that" || word === "same");

export const ORDER_RULES = [
  ...rule(
    "same-day",
    [
      "that? same day|morning|afternoon|evening|night|arvo",
      "the very? same day|morning|afternoon|evening|night|arvo",
      "that|later|earlier that? day|morning|afternoon|evening|night|arvo",
      "that very day|morning|night",
    ],
    (_, reference, place) => (isSameDay(place) ? counted(anchorOf(place, reference), place, 0.9) : undefined),
  ),
  ...rule(
    "same-unit",
    ["the|that? very? same <unit>", "later|earlier? that very? <unit>"],
    ({ unit }, reference, place) => counted(around(anchorOf(place, reference), unit), place, 0.8),
  ),
  ...rule("same-weekend", ["that|the very? same? weekend"], (_, reference, place) =>
    place.next - place.at > 2 || place.tokens[place.at]?.word === "that"
      ? counted(weekendOf(anchorOf(place, reference).from), place, 0.8)
      : undefined,
  ),
  ...rule(
    "next-day",
    [
      "on? the? very? next|following day|morning|afternoon|evening|night|arvo",
      "the day|morning|night after that?",
      "a day later",
      "day after",
    ],
    (_, reference, place) => counted(beside(anchorOf(place, reference), "day", 1), place),
  ),
  ...rule(
    "day-before-that",
    ["the day|night|morning before that?", "the previous day|night"],
    (_, reference, place) => counted(beside(anchorOf(place, reference), "day", -1), place),
  ),
  ...rule(
    "following-unit",
    ["the very? next|following <unit>", "the <unit> after that?"],
    ({ unit }, reference, place) => counted(beside(anchorOf(place, reference), unit, 1), place),
  ),
  ...rule(
    "unit-before-that",
    ["the <unit> before that?", "the previous <unit>"],
    ({ unit }, reference, place) => counted(beside(anchorOf(place, reference), unit, -1), place, 0.7),
  ),
  ...rule(
    "one-before",
    ["the one before that|last?", "the one before this|that one?"],
    (_, reference, place) => counted(place.before && oneBefore(place.before, reference), place, 0.75),
  ),
  ...rule(
    "following-weekend",
    ["on? the next|following weekend", "on? the weekend after that?"],
    (_, reference, place) => counted(weekendBeside(anchorOf(place, reference), 1), place),
  ),
  ...rule(
    "following-weekday",
    ["on? the next|following <weekday>", "on? the <weekday> after that?"],
    ({ weekday }, reference, place) => counted(weekdayBeside(anchorOf(place, reference), weekday, 1), place),
  ),
  ...rule("that-weekday", ["that <weekday>", "on? that same <weekday>"], ({ weekday }, reference, place) => {
    const anchor = anchorOf(place, reference);
    const week =
      anchor.grain === "week" || anchor.grain === "span" ? anchor.from.subtract({ days: 1 }) : anchor.from;
    return counted(weekdayBeside({ ...anchor, last: week }, weekday, 1), place, 0.6);
  }),
  ...rule(
    "following-season",
    ["the next|following <season>", "the <season> after that?"],
    ({ season }, reference, place) =>
      counted(nextSeason(season, anchorOf(place, reference), reference), place),
  ),
  ...rule("season-before-that", ["the <season> before that?"], ({ season }, reference, place) =>
    counted(seasonBefore(season, anchorOf(place, reference), reference), place),
  ),
  ...rule("that-season", ["that? same <season>", "later? that <season>"], ({ season }, reference, place) =>
    isSeason(place)
      ? counted(seasonAround(season, anchorOf(place, reference), reference), place, 0.7)
      : undefined,
  ),
  ...rule(
    "following-month",
    ["the next|following <month>", "the <month> after that?"],
    ({ month }, reference, place) =>
      counted(
        nearest(
          { today: anchorOf(place, reference).last.add({ days: 1 }), prefer: "future" },
          monthIn(month),
        ),
        place,
      ),
  ),
  ...rule("that-month", ["that <month>"], ({ month }, reference, place) => {
    const { from } = anchorOf(place, reference);
    return counted(monthIn(month)(from.month > month + 6 ? from.year + 1 : from.year), place, 0.7);
  }),
  ...rule(
    "later",
    [
      "<length> later",
      "<length> after that|this",
      "<length> on from that",
      "<length> afterwards|afterward|after",
    ],
    ({ length }, reference, place) => counted(offset(length, anchorOf(place, reference), 1), place),
  ),
  ...rule(
    "before-that",
    ["<length> before that|this?", "<length> beforehand|earlier", "<length> prior to that"],
    ({ length }, reference, place) => counted(offset(length, anchorOf(place, reference), -1), place, 0.75),
  ),
];
