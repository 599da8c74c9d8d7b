import type { Length } from "../length.ts";
import type { TimeUnit } from "../lexicon.ts";
import { about, dayOf, monthOf, type Period, seasonOf, spanOf, weekOf, yearOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { weekdayBefore, weekendOf } from "../resolve.ts";
import { type Place, rule } from "../rule.ts";
import { shifted } from "../shift.ts";

const found = (period: Period, sure: number) => ({ period, direction: "either" as const, sure });

/** The unit just before or after a period. */
const beside = (period: Period, unit: TimeUnit, side: -1 | 1): Period | undefined => {
  const edge = side < 0 ? period.from : period.last;
  if (unit === "day") return dayOf(edge.add({ days: side }));
  if (unit === "week") return weekOf(edge.add({ days: 7 * side }));
  if (unit === "month") return monthOf(edge.with({ day: 1 }).add({ months: side }));
  if (unit === "year") return yearOf(edge.year + side);
  return undefined;
};
const offset = (length: Length, when: Period, side: -1 | 1): Period | undefined =>
  length.unit === "hour" || length.unit === "minute"
    ? undefined
    : shifted(side < 0 ? when.from : when.last, length, side);

/** "end of August" stays the month; the edge of a span or a week keeps the whole. */
const edge = (period: Period): Period => ({ ...period, about: false });

const sameKind = (a: Period, b: Period) => a.grain === b.grain || (a.grain !== "year" && b.grain !== "year");
const AFTER_THAT = { role: "after-that", direction: "either" } as const;
const anchorOf = (place: Place, reference: Reference): Period => place.before ?? dayOf(reference.today);
const later = (period: Period, place: Place, sure = 0.85) => ({
  ...AFTER_THAT,
  period,
  sure: place.before === undefined ? 0.3 : sure,
});

export const AROUND_RULES = [
  ...rule(
    "edge",
    [
      "in|at|around|by|toward|towards? the? end|start|beginning|middle|back|front|tail of <when>",
      "at? the? very? end|start|beginning of <when>",
      "in|around? early|late|mid|middle - <when>",
      "in|around? early|late|mid|earlier|later <when>",
      "in? early|late|earlier|later on? in <when>",
      "in? the? early|latter|later|first|second|last|back|front half|part of <when>",
      "in? the? first|second|third|last week or two|so? of|in <when>",
      "in|during? the? first|second|third|fourth|last couple|few|two|three? week|weeks|days|day of|in <when>",
      "sometime|somewhere in|during|around? <when>",
      "the month of <when>",
      "tail end of <when>",
    ],
    ({ when }) => found(edge(when), 0.9),
  ),
  ...rule(
    "about",
    [
      "around|about|approximately|near|like|maybe|say|probably <when>",
      "or so <when>",
      "right|just around|about <when>",
      "round about <when>",
    ],
    ({ when }) => found(about(when), 0.85),
  ),
  ...rule(
    "beside",
    ["the? <unit> before|after <when>", "the? <unit> prior to <when>"],
    ({ unit, when }, _reference, place) => {
      const after = place.tokens.slice(place.at, place.at + 3).some(({ word }) => word === "after");
      const period = beside(when, unit, after ? 1 : -1);
      return period && found({ ...period, about: unit !== "day" }, 0.9);
    },
  ),
  ...rule("weekend-beside", ["the? weekend before|after <when>"], ({ when }, _reference, place) => {
    const after = place.tokens.slice(place.at, place.at + 3).some(({ word }) => word === "after");
    const day = after
      ? when.last.add({ days: 7 - (when.last.dayOfWeek === 7 ? 7 : 0) })
      : when.from.subtract({ days: 1 });
    const there = after
      ? weekendOf(when.last.dayOfWeek >= 6 ? day : when.last)
      : weekendOf(weekdayBefore(when.from, 7));
    return found(there, 0.85);
  }),
  ...rule(
    "weekday-beside",
    ["the? <weekday> before|after <when>"],
    ({ weekday, when }, _reference, place) => {
      const after = place.tokens.slice(place.at, place.at + 3).some(({ word }) => word === "after");
      const there = after
        ? when.last.add({ days: (weekday - when.last.dayOfWeek + 7) % 7 || 7 })
        : weekdayBefore(when.from, weekday);
      return found(dayOf(there), 0.9);
    },
  ),
  ...rule(
    "offset-before",
    ["<length> before|ahead of? <when>", "<length> prior to <when>"],
    ({ length, when }) => {
      const period = offset(length, when, -1);
      return period && found(period, 0.9);
    },
  ),
  ...rule("offset-after", ["<length> after|from|following|past <when>"], ({ length, when }) => {
    const period = offset(length, when, 1);
    return period && found(period, 0.9);
  }),
  ...rule("just-beside", ["just|right|shortly|soon before|after <when>"], ({ when }) =>
    found(about(when), 0.8),
  ),
  ...rule("or", ["either <when> or <when2>"], ({ when, when2 }) =>
    sameKind(when, when2) ? found(spanOf(when, when2), 0.8) : undefined,
  ),
  ...rule(
    "between",
    [
      "between <when> and <when2>",
      "from <when> to|through|until <when2>",
      "from <when> up to|until|through <when2>",
    ],
    ({ when, when2 }) => found(spanOf(when, when2), 0.9),
  ),
  ...rule(
    "since",
    [
      "ever? since <when>",
      "ever? since like|about|around <when>",
      "from <when> on|onward|onwards",
      "anything? after <when>",
      "starting <when>",
    ],
    ({ when }) => ({
      period: when,
      role: "since",
      direction: "either",
      sure: 0.9,
    }),
  ),
  ...rule(
    "until",
    [
      "not? until|by|before <when>",
      "up? to|until <when>",
      "up until <when>",
      "prior to <when>",
      "no later than <when>",
      "sometime before <when>",
      "ahead of <when>",
    ],
    ({ when }) => ({
      period: when,
      role: "until",
      direction: "either",
      sure: 0.9,
    }),
  ),
  ...rule("since-season", ["since <season>"], ({ season }, { today, hemisphere }) => ({
    period:
      [today.year, today.year - 1, today.year - 2]
        .map((year) => seasonOf(season, year, hemisphere))
        .find(({ from }) => today.since(from).days > 0) ?? seasonOf(season, today.year - 1, hemisphere),
    role: "since",
    direction: "past",
    sure: 0.9,
  })),
  ...rule(
    "same-time",
    [
      "that? same day|morning|afternoon|evening|night|arvo|week|weekend|month|trip",
      "the same day|morning|afternoon|evening|night|arvo|week|weekend|month",
      "that day|evening|night|weekend",
      "that very day",
      "same day",
    ],
    (_, reference, place) =>
      place.tokens[place.next - 1]?.word === "trip"
        ? undefined
        : later(anchorOf(place, reference), place, 0.9),
  ),
  ...rule(
    "next-day",
    [
      "the? next|following day|morning|afternoon|evening|night|arvo",
      "the very next day|morning|night",
      "the day|morning after that?",
      "a day later|after",
    ],
    (_, reference, place) => later(dayOf(anchorOf(place, reference).last.add({ days: 1 })), place),
  ),
  ...rule(
    "day-before-that",
    ["the? day|night|morning before that?", "the previous day|night"],
    (_, reference, place) => later(dayOf(anchorOf(place, reference).from.subtract({ days: 1 })), place),
  ),
  ...rule(
    "following-unit",
    ["the next|following <unit>", "the <unit> after that?"],
    ({ unit }, reference, place) => {
      const period = beside(anchorOf(place, reference), unit, 1);
      return period && later(period, place);
    },
  ),
  ...rule(
    "unit-before-that",
    ["the <unit> before that", "the <unit> before"],
    ({ unit }, reference, place) => {
      const period = beside(anchorOf(place, reference), unit, -1);
      return period && later(period, place, 0.7);
    },
  ),
  ...rule(
    "following-season",
    ["the next|following <season>", "the <season> after that?"],
    ({ season }, reference, place) => {
      const { last } = anchorOf(place, reference);
      const next = [last.year - 1, last.year, last.year + 1]
        .map((year) => seasonOf(season, year, reference.hemisphere))
        .find(({ from }) => from.since(last).days > 0);
      return next && later(next, place);
    },
  ),
  ...rule("that-season", ["that? same <season>", "that <season>"], ({ season }, reference, place) => {
    const { from } = anchorOf(place, reference);
    const there = [from.year - 1, from.year]
      .map((year) => seasonOf(season, year, reference.hemisphere))
      .filter((one) => one.from.since(from).days <= 92)
      .at(-1);
    return there && later(there, place, 0.7);
  }),
  ...rule(
    "following-weekday",
    ["the next|following <weekday>", "the <weekday> after that?"],
    ({ weekday }, reference, place) => {
      const { last } = anchorOf(place, reference);
      return later(dayOf(last.add({ days: (weekday - last.dayOfWeek + 7) % 7 || 7 })), place);
    },
  ),
  ...rule(
    "later",
    ["<length> later", "<length> after that", "<length> on from that", "<length> afterwards|afterward|after"],
    ({ length }, reference, place) => {
      const period = offset(length, anchorOf(place, reference), 1);
      return period && later(period, place);
    },
  ),
  ...rule(
    "before-that",
    ["<length> before that", "<length> beforehand", "<length> before"],
    ({ length }, reference, place) => {
      const period = offset(length, anchorOf(place, reference), -1);
      return period && later(period, place, 0.75);
    },
  ),
];
