import type { Length } from "../length.ts";
import { future, past } from "../meaning.ts";
import { about, dayOf, monthOf, spanOf, weekOf } from "../period.ts";
import { lastWhole, monthIn, weekdayBefore } from "../resolve.ts";
import { type Place, rule, wordAfter } from "../rule.ts";
import { addTo, fromNow, shifted } from "../shift.ts";

const isCoarse = ({ unit }: Length): boolean => unit !== "hour" && unit !== "minute";
const isWeekly = ({ unit }: Length): boolean => unit === "week" || unit === "fortnight";
const lastWord = ({ tokens, next }: Place): string => tokens[next - 1]?.word ?? "";

/** "two years back", not "put it back in". */
const isBackThere = (place: Place): boolean =>
  lastWord(place) === "back" && ["there", "in", "on", "together"].includes(wordAfter(place));

/** "put it in two years ago", "in the two years since I built it". */
const isPastAfter = (place: Place): boolean =>
  ["ago", "back", "since", "that", "of"].includes(wordAfter(place));

export const AGO_RULES = [
  ...rule("ago", ["<length> ago|back|prior|earlier", "<length> a go"], ({ length }, reference, place) =>
    isBackThere(place) ? undefined : past(fromNow(reference, length, -1), 0.95),
  ),
  ...rule(
    "ago-today",
    ["<length> ago today", "<length> ago to the day", "<length> to the day"],
    ({ length }, { today }) =>
      isCoarse(length) ? past(dayOf(addTo(today, length.unit, -length.low)), 0.9) : undefined,
  ),
  ...rule(
    "ago-yesterday",
    ["<length> ago yesterday|tomorrow", "<length> ago the day before yesterday"],
    ({ length }, { today }, place) => {
      const shift = { yesterday: -1, tomorrow: 1 }[lastWord(place)] ?? 0;
      const before = place.tokens[place.next - 2]?.word === "before" ? -1 : 0;
      return isCoarse(length)
        ? past(dayOf(addTo(today, length.unit, -length.low).add({ days: shift + before })), 0.85)
        : undefined;
    },
  ),
  ...rule(
    "this-time-ago",
    ["around|about? this time <length> ago|back", "around|about? the? same time <length> ago|back"],
    ({ length }, { today }) =>
      length.unit === "year" ? past(about(monthOf(addTo(today, "year", -length.low))), 0.8) : undefined,
  ),
  ...rule("ago-this-month", ["<length> ago this month"], ({ length }, { today }) =>
    isCoarse(length) ? past(monthOf(addTo(today, length.unit, -length.low)), 0.9) : undefined,
  ),
  ...rule("ago-this-week", ["<length> ago this week"], ({ length }, { today }) =>
    isCoarse(length) ? past(weekOf(addTo(today, length.unit, -length.low)), 0.7) : undefined,
  ),
  ...rule(
    "ago-weekday",
    ["<length> ago on? last? <weekday>", "<weekday> <length> ago"],
    ({ length, weekday }, { today }) =>
      isWeekly(length) ? past(shifted(weekdayBefore(today, weekday), length, -1), 0.9) : undefined,
  ),
  ...rule(
    "ago-month-name",
    ["<length> ago ,in|this|come? <month>", "<length> ago this past|coming <month>"],
    ({ length, month }, { today }) =>
      length.unit === "year" && Number.isInteger(length.low)
        ? past(monthOf(today.with({ day: 1, month, year: today.year - length.low })), 0.9)
        : undefined,
  ),
  ...rule("ago-last-month-name", ["<length> ago ,back? last <month>"], ({ length, month }, { today }) =>
    length.unit === "year" && Number.isInteger(length.low)
      ? past(monthOf(lastWhole(today, monthIn(month)).from.subtract({ years: length.low })), 0.9)
      : undefined,
  ),
  ...rule(
    "anniversary",
    [
      "be|been|was <length> this|in|come <month>",
      "<length> this|come <month>",
      "<length> this coming <month>",
      "<length> old? this|come <month>",
    ],
    ({ length, month }, { today }) => {
      if (length.unit !== "year" || !Number.isInteger(length.low)) return undefined;
      const near = [-1, 0, 1]
        .map((years) => monthIn(month)(today.year + years))
        .find(({ last }) => last.since(today).days > -150);
      return past(near && monthOf(near.from.subtract({ years: length.low })), 0.8);
    },
  ),
  ...rule(
    "from-now",
    ["in <length>", "<length> from now|today", "in? <length> time", "<length> hence"],
    ({ length }, reference, place) => {
      if (!isCoarse(length) || (length.unit === "day" && length.high === 1)) return undefined;
      if (isPastAfter(place)) return undefined;
      const plain = reference.prefer === "past" && !["now", "today", "time"].includes(lastWord(place));
      return future(fromNow(reference, length, 1), plain ? 0.3 : 0.9);
    },
  ),
  ...rule(
    "lately",
    ["in|over|during|within the|this? last|past|previous <length>", "the|this? last|past|previous <length>"],
    ({ length }, { today }, place) =>
      isCoarse(length) && (length.high > 1 || place.next - place.at > 3)
        ? past(spanOf(dayOf(addTo(today, length.unit, -length.high)), dayOf(today)), 0.8)
        : undefined,
  ),
  ...rule(
    "ahead",
    ["in|over|during|within the? next|coming <length>", "the? next|coming <length>"],
    ({ length }, { today }, place) =>
      isCoarse(length) && (length.high > 1 || place.next - place.at > 3)
        ? future(spanOf(dayOf(today), dayOf(addTo(today, length.unit, length.high))), 0.7)
        : undefined,
  ),
  ...rule("within", ["within <length>"], ({ length }, { today, prefer }) =>
    isCoarse(length) && prefer === "future"
      ? future(spanOf(dayOf(today), dayOf(addTo(today, length.unit, length.high))), 0.8)
      : undefined,
  ),
];
