import { isAmbiguous } from "../lexicon.ts";
import { about, dayOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { unitAround, weekdayAfter, weekdayBefore, weekdayIn, weekdayNear, weekendOf } from "../resolve.ts";
import { type Place, rule, wordBefore } from "../rule.ts";

/** Before three in the morning, people still speak of the day that they got up on. */
const waking = ({ today, hour }: Reference) => (hour < 3 ? today.subtract({ days: 1 }) : today);
const day = (reference: Reference, days: number) => dayOf(reference.today.add({ days }));

/** "sat", "sun" and "wed" are days only after a word that says so. */
const meantAsDay = (place: Place, at = place.at): boolean => {
  const token = place.tokens[at];
  if (token === undefined || !isAmbiguous(token.raw) || token.raw === "mon") return true;
  const before = wordBefore({ ...place, at });
  const after = place.tokens[at + 1];
  if (["on", "last", "this", "next", "since", "by", "until", "past", "coming", "and", "or"].includes(before))
    return token.raw !== "sun" || before !== "this";
  return token.capital && (after === undefined || after.gap !== "space" || /^\d/u.test(after.raw));
};
const NOW = new Set(["its", "is", "todays", "today"]);

export const DAYS = [
  ...rule(
    "today",
    ["today", "earlier today", "later today", "just now", "right now", "just today", "today <part>"],
    (_, reference) => ({
      period: dayOf(reference.today),
      direction: "either",
      sure: 0.98,
    }),
  ),
  ...rule(
    "this-part",
    ["this <part>", "earlier this <part>", "tonight", "first thing this <part>", "late|early this <part>"],
    (_, reference) => ({
      period: dayOf(waking(reference)),
      direction: "either",
      sure: 0.96,
    }),
  ),
  ...rule(
    "yesterday",
    ["yesterday", "yesterday <part>", "late|early yesterday", "late|early yesterday <part>"],
    (_, reference) => ({
      period: day(reference, -1),
      direction: "past",
      sure: 0.98,
    }),
  ),
  ...rule("last-night", ["last night|evening", "late last night"], (_, reference) => ({
    period: day(reference, -1),
    direction: "past",
    sure: 0.95,
  })),
  ...rule(
    "day-before-yesterday",
    ["the? day|night before yesterday", "the? night|evening before last"],
    (_, reference) => ({
      period: day(reference, -2),
      direction: "past",
      sure: 0.97,
    }),
  ),
  ...rule("tomorrow", ["tomorrow", "tomorrow <part>"], (_, reference) => ({
    period: day(reference, 1),
    direction: "future",
    sure: 0.97,
  })),
  ...rule("in-the-morning", ["in the morning", "first thing in the morning"], (_, reference) =>
    reference.prefer === "future" ? { period: day(reference, 1), direction: "future", sure: 0.9 } : undefined,
  ),
  ...rule("day-after-tomorrow", ["the? day after tomorrow"], (_, reference) => ({
    period: day(reference, 2),
    direction: "future",
    sure: 0.97,
  })),
  ...rule(
    "other-day",
    ["the other day|night|morning|evening", "a? couple of? days ago or so"],
    (_, reference) => ({
      period: about(day(reference, -3)),
      direction: "past",
      sure: 0.5,
    }),
  ),
  ...rule(
    "weekday",
    ["on? <weekday>", "on? <weekday> <part>", "on a <weekday>"],
    ({ weekday }, reference, place) => {
      const at = place.tokens[place.at]?.word === "on" ? place.at + 1 : place.at;
      if (!meantAsDay(place, at)) return undefined;
      if (NOW.has(wordBefore(place)) && reference.today.dayOfWeek === weekday)
        return { period: dayOf(reference.today), direction: "either", sure: 0.9 };
      return { period: weekdayNear(reference, weekday), direction: "either", sure: 0.9 };
    },
  ),
  ...rule(
    "last-weekday",
    [
      "on? last|past|previous <weekday>",
      "on? this past|last <weekday>",
      "last|past <weekday> <part>",
      "<weekday> gone",
      "<weekday> just gone",
      "this past|last <weekday> <part>",
    ],
    ({ weekday }, reference) => ({
      period: dayOf(weekdayBefore(reference.today, weekday)),
      direction: "past",
      sure: 0.85,
    }),
  ),
  ...rule(
    "weekday-before-last",
    ["on? the? <weekday> before last", "last <weekday> week", "the <weekday> before"],
    ({ weekday }, reference, place) =>
      place.tokens[place.next - 1]?.word === "before"
        ? undefined
        : {
            period: dayOf(weekdayBefore(reference.today, weekday).subtract({ days: 7 })),
            direction: "past",
            sure: 0.9,
          },
  ),
  ...rule("weekdays-ago", ["<n> <weekdays> ago|back"], ({ n, weekdays }, { today }) =>
    Number.isInteger(n.low)
      ? {
          period: dayOf(weekdayBefore(today, weekdays).subtract({ days: 7 * (n.low - 1) })),
          direction: "past",
          sure: 0.9,
        }
      : undefined,
  ),
  ...rule(
    "week-last-weekday",
    ["a week last <weekday>", "a week past <weekday>"],
    ({ weekday }, { today }) => ({
      period: dayOf(weekdayBefore(today, weekday).subtract({ days: 7 })),
      direction: "past",
      sure: 0.85,
    }),
  ),
  ...rule(
    "weekday-last-week",
    ["<weekday> of? last week", "last week ,on? <weekday>", "last week ,<weekday>"],
    ({ weekday }, reference) => ({
      period: dayOf(weekdayIn(unitAround(reference, "week", -1), weekday)),
      direction: "past",
      sure: 0.9,
    }),
  ),
  ...rule(
    "weekday-next-week",
    ["<weekday> next week", "<weekday> of next week", "next week on? <weekday>", "on? next <weekday>"],
    ({ weekday }, reference) => ({
      period: dayOf(weekdayIn(unitAround(reference, "week", 1), weekday)),
      direction: "future",
      sure: 0.7,
    }),
  ),
  ...rule(
    "weekday-week",
    ["<weekday> week", "a week on? <weekday>", "a week from <weekday>"],
    ({ weekday }, reference) => ({
      period: dayOf(weekdayAfter(reference.today, weekday).add({ days: 7 })),
      direction: "future",
      sure: 0.6,
    }),
  ),
  ...rule(
    "this-weekday",
    ["this <weekday>", "this <weekday> <part>", "this coming <weekday>"],
    ({ weekday }, reference, place) => {
      if (!meantAsDay(place, place.at + 1)) return undefined;
      const coming = place.tokens[place.at + 1]?.word === "coming" || reference.prefer === "future";
      const there = coming
        ? weekdayAfter(reference.today, weekday)
        : weekdayIn(unitAround(reference, "week", 0), weekday);
      return { period: dayOf(there), direction: "either", sure: 0.8 };
    },
  ),
  ...rule(
    "weekend",
    [
      "this weekend",
      "over|on|at|during|for the weekend",
      "the weekend",
      "this past weekend",
      "this coming weekend",
      "over|at|on weekend",
    ],
    (_, reference, place) => {
      const { today, prefer } = reference;
      const coming = place.tokens[place.at + 1]?.word === "coming";
      const past = prefer === "past" && !coming;
      return {
        period: weekendOf(past && today.dayOfWeek < 6 ? today.subtract({ days: 7 }) : today),
        direction: "either",
        sure: 0.85,
      };
    },
  ),
  ...rule("last-weekend", ["on|over? last weekend"], (_, { today }) => ({
    period: weekendOf(today.subtract({ days: 7 })),
    direction: "past",
    sure: 0.85,
  })),
  ...rule(
    "weekend-before-last",
    ["the? weekend before last", "two weekends ago", "a couple of? weekends ago", "couple of? weekends ago"],
    (_, { today }) => ({
      period: weekendOf(today.subtract({ days: 14 })),
      direction: "past",
      sure: 0.9,
    }),
  ),
  ...rule("next-weekend", ["next weekend"], (_, { today }) => ({
    period: weekendOf(today.add({ days: 7 })),
    direction: "future",
    sure: 0.7,
  })),
];
