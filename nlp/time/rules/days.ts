import { isAmong } from "../context.ts";
import { WEEKDAYS } from "../lexicon.ts";
import { either, future, past } from "../meaning.ts";
import { isDay } from "../meant.ts";
import { about, dayOf, spanOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { unitAround, weekdayAfter, weekdayBefore, weekdayIn, weekdayNear } from "../resolve.ts";
import { rule, wordBefore } from "../rule.ts";

/** Before three in the morning, people still speak of the day that they got up on. */
const waking = ({ today, now }: Reference) => (now.hour < 3 ? today.subtract({ days: 1 }) : today);
/** Days after the first within which each weekday comes but once. */
const LONGEST_WEEK = 6;
const MOST_NIGHTS = 30;
const day = (reference: Reference, days: number) => dayOf(reference.today.add({ days }));

export const DAY_RULES = [
  ...rule(
    "today",
    [
      "today",
      "earlier today",
      "later today",
      "just now",
      "right now",
      "just today",
      "today <part>",
      "just a while|moment|bit|minute|second ago|back",
      "a little|short while ago|back",
      "a wee|little bit ago|back",
      "a moment|second ago",
      "just? this very? minute|second|instant",
    ],
    (_, reference) => either(dayOf(reference.today), 0.98),
  ),
  ...rule(
    "this-part",
    ["this <part>", "earlier this <part>", "tonight", "first thing this <part>", "late|early this <part>"],
    (_, reference) => either(dayOf(waking(reference)), 0.96),
  ),
  ...rule(
    "yesterday",
    ["yesterday", "yesterday <part>", "late|early yesterday", "late|early yesterday <part>"],
    (_, reference) => past(day(reference, -1), 0.98),
  ),
  ...rule("last-night", ["last night|evening", "late last night"], (_, reference) =>
    past(day(reference, -1), 0.95),
  ),
  ...rule("nights-ago", ["<n> nights|night|mornings|evenings ago|back"], ({ n }, reference) => {
    if (!Number.isInteger(n.low) || n.low > MOST_NIGHTS) return undefined;
    const there = spanOf(day(reference, -n.high), day(reference, -n.low));
    return past(n.kind === "vague" ? about(there) : there, 0.9);
  }),
  ...rule(
    "day-before-yesterday",
    ["the? day|night before yesterday", "the? night|evening before last"],
    (_, reference) => past(day(reference, -2), 0.97),
  ),
  ...rule("tomorrow", ["tomorrow", "tomorrow <part>"], (_, reference) => future(day(reference, 1), 0.97)),
  ...rule("in-the-morning", ["in the morning", "first thing in the morning"], (_, reference) =>
    reference.prefer === "future" ? future(day(reference, 1), 0.9) : undefined,
  ),
  ...rule("day-after-tomorrow", ["the? day after tomorrow"], (_, reference) =>
    future(day(reference, 2), 0.97),
  ),
  ...rule(
    "other-day",
    ["the other day|night|morning|evening|afternoon|arvo", "a? couple of? days ago or so"],
    (_, reference) => past(about(day(reference, -3)), 0.5),
  ),
  ...rule("other-week", ["the other week"], (_, reference) => past(about(day(reference, -14)), 0.4)),
  ...rule("day-part-of", ["on|in? the <part> of <when>"], ({ when }) =>
    when.grain === "day" ? either(when, 0.9) : undefined,
  ),
  ...rule(
    "weekday",
    [
      "on? <weekday>",
      "on? <weekday> <part>",
      "on a <weekday>",
      "late|early on? <weekday>",
      "late|early on? <weekday> <part>",
      "first thing on? <weekday>",
    ],
    ({ weekday }, reference, place) => {
      const at = place.tokens.findIndex(({ word }, i) => i >= place.at && WEEKDAYS.has(word));
      if (!isDay(place, at)) return undefined;
      if (isAmong("is", wordBefore(place)) && reference.today.dayOfWeek === weekday)
        return either(dayOf(reference.today), 0.9);
      return either(weekdayNear(reference, weekday), 0.9);
    },
  ),
  ...rule(
    "last-weekday",
    [
      "on? last|past|previous <weekday>",
      "on? this past|last <weekday>",
      "last|past <weekday> <part>",
      "on? the|this|that|last? <weekday> just? gone|past|been",
      "this past|last <weekday> <part>",
    ],
    ({ weekday }, reference) => past(dayOf(weekdayBefore(reference.today, weekday)), 0.85),
  ),
  ...rule(
    "weekday-before-last",
    ["on? the? <weekday> before last", "last <weekday> week"],
    ({ weekday }, { today }) => past(dayOf(weekdayBefore(today, weekday).subtract({ days: 7 })), 0.9),
  ),
  ...rule(
    "this-week-weekday",
    ["this week ,on? <weekday>", "on? the? <weekday> of? this week", "earlier this week on <weekday>"],
    ({ weekday }, reference) => either(dayOf(weekdayIn(unitAround(reference, "week", 0), weekday)), 0.9),
  ),
  ...rule(
    "weekday-within",
    ["<when> ,the|on|that? <weekday>", "the? <weekday> of|on <when>"],
    ({ when, weekday }, _reference, place) => {
      const days = when.last.since(when.from).days;
      if (when.grain === "day" || days > LONGEST_WEEK) return undefined;
      if (
        !isDay(
          place,
          place.tokens.findIndex(({ word }, i) => i >= place.at && WEEKDAYS.has(word)),
        )
      )
        return undefined;
      const first = when.from.add({ days: (weekday - when.from.dayOfWeek + 7) % 7 });
      return first.until(when.last).days < 0 ? undefined : either(dayOf(first), 0.9);
    },
  ),
  ...rule("some-weekday-in", ["on? one|a|some <weekday> back? in <when>"], ({ when }) =>
    when.grain === "day" ? undefined : either(when, 0.85),
  ),
  ...rule("weekdays-ago", ["<n> <weekdays> ago|back"], ({ n, weekdays }, { today }) =>
    Number.isInteger(n.low)
      ? past(dayOf(weekdayBefore(today, weekdays).subtract({ days: 7 * (n.low - 1) })), 0.9)
      : undefined,
  ),
  ...rule("week-last-weekday", ["a week last|past <weekday>"], ({ weekday }, { today }) =>
    past(dayOf(weekdayBefore(today, weekday).subtract({ days: 7 })), 0.85),
  ),
  ...rule("fortnight-last-weekday", ["a fortnight last|past <weekday>"], ({ weekday }, { today }) =>
    past(dayOf(weekdayBefore(today, weekday).subtract({ days: 14 })), 0.85),
  ),
  ...rule("yesterday-or-before", ["yesterday or the day before", "a day or two ago|back"], (_, reference) =>
    past(spanOf(day(reference, -2), day(reference, -1)), 0.9),
  ),
  ...rule(
    "weekday-last-week",
    ["on? the? <weekday> of? last week", "last week ,on? <weekday>"],
    ({ weekday }, reference) => past(dayOf(weekdayIn(unitAround(reference, "week", -1), weekday)), 0.9),
  ),
  ...rule(
    "weekday-next-week",
    ["on? <weekday> of? next week", "next week ,on? <weekday>", "on? next <weekday>"],
    ({ weekday }, reference) => future(dayOf(weekdayIn(unitAround(reference, "week", 1), weekday)), 0.7),
  ),
  ...rule("weekday-week", ["<weekday> week", "a week on|from? <weekday>"], ({ weekday }, { today }) =>
    future(dayOf(weekdayAfter(today, weekday).add({ days: 7 })), 0.6),
  ),
  ...rule(
    "weekday-fortnight",
    ["<weekday> fortnight", "a fortnight on|from? <weekday>"],
    ({ weekday }, { today }) => future(dayOf(weekdayAfter(today, weekday).add({ days: 14 })), 0.6),
  ),
  ...rule(
    "this-weekday",
    ["on? this <weekday>", "on? this <weekday> <part>"],
    ({ weekday }, reference, place) => {
      const at = place.tokens[place.at]?.word === "on" ? place.at + 2 : place.at + 1;
      if (!isDay(place, at)) return undefined;
      const { today, prefer } = reference;
      const thisWeek = weekdayIn(unitAround(reference, "week", 0), weekday);
      return either(dayOf(prefer === "future" ? weekdayAfter(today, weekday) : thisWeek), 0.8);
    },
  ),
  ...rule("coming-weekday", ["on? this? coming|upcoming|following <weekday>"], ({ weekday }, { today }) =>
    future(dayOf(weekdayAfter(today, weekday)), 0.8),
  ),
  ...rule("weekday-after-next", ["the? <weekday> after next"], ({ weekday }, { today }) =>
    future(dayOf(weekdayAfter(today, weekday).add({ days: 7 })), 0.8),
  ),
  ...rule("weekdays-ahead", ["<n> <weekdays> from now"], ({ n, weekdays }, { today }) =>
    Number.isInteger(n.low)
      ? future(dayOf(weekdayAfter(today, weekdays).add({ days: 7 * (n.low - 1) })), 0.8)
      : undefined,
  ),
];
