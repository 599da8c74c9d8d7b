import { exposureOf, type Length, middleOf } from "../length.ts";
import { about, dayOf, monthOf, spanOf, weekOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { weekdayBefore } from "../resolve.ts";
import { type Meaning, type Place, rule, wordAfter, wordBefore } from "../rule.ts";
import { fromNow, shifted } from "../shift.ts";

const RECURRING = new Set(["every", "each", "per", "another"]);
/** "Six years old", "two year warranty": no time that work has lasted. */
const NOT_LASTING = new Set([
  "old",
  "warranty",
  "trip",
  "drive",
  "rated",
  "each",
  "away",
  "guarantee",
  "job",
]);
const recurs = (place: Place): boolean => RECURRING.has(wordBefore(place));
const coarse = ({ unit }: Length): boolean => unit !== "hour" && unit !== "minute";

const held = (length: Length, reference: Reference, sure: number): Meaning | undefined => {
  const lasting = exposureOf(length);
  if (lasting === undefined || lasting.count === 0) return undefined;
  const period = about(shifted(reference.today, middleOf(length), -1));
  return { period, lasting, role: "lasting", direction: "past", sure };
};

export const AGO = [
  ...rule(
    "ago",
    ["<length> ago", "<length> back", "<length> prior", "<length> earlier"],
    ({ length }, reference, place) =>
      ["there", "in", "on", "together"].includes(wordAfter(place)) &&
      place.tokens[place.next - 1]?.word === "back"
        ? undefined
        : { period: fromNow(reference, length, -1), direction: "past", sure: 0.95 },
  ),
  ...rule(
    "ago-today",
    ["<length> ago today", "<length> ago to the day", "<length> to the day"],
    ({ length }, reference) => ({
      period: dayOf(
        shifted(reference.today, length, -1).from.with({
          day: reference.today.day,
          month: reference.today.month,
        }),
      ),
      direction: "past",
      sure: 0.9,
    }),
  ),
  ...rule("ago-month", ["<length> ago this month"], ({ length }, { today }) => ({
    period: monthOf(today.subtract({ years: length.unit === "year" ? length.low : 0 })),
    direction: "past",
    sure: 0.9,
  })),
  ...rule("ago-week", ["<length> ago this week"], ({ length }, { today }) => ({
    period: weekOf(shifted(today, length, -1).from),
    direction: "past",
    sure: 0.7,
  })),
  ...rule(
    "ago-weekday",
    ["<length> ago on? last? <weekday>", "<weekday> <length> ago"],
    ({ length, weekday }, { today }) =>
      length.unit === "week" || length.unit === "fortnight"
        ? {
            period: dayOf(shifted(weekdayBefore(today, weekday), length, -1).from),
            direction: "past",
            sure: 0.9,
          }
        : undefined,
  ),
  ...rule("ago-month-name", ["<length> ago in <month>"], ({ length, month }, { today }) =>
    length.unit === "year"
      ? {
          period: monthOf(today.with({ day: 1, month, year: today.year - length.low })),
          direction: "past",
          sure: 0.9,
        }
      : undefined,
  ),
  ...rule(
    "from-now",
    ["in <length>", "<length> from now", "<length> from today", "<length> time", "in <length> time"],
    ({ length }, reference, place) =>
      coarse(length)
        ? {
            period: fromNow(reference, length, 1),
            direction: "future",
            sure: place.tokens[place.next - 1]?.word === "now" || reference.prefer === "future" ? 0.9 : 0.3,
          }
        : undefined,
  ),
  ...rule(
    "lately",
    ["in|over|during|for the? last|past|previous <length>", "the? last|past|previous <length>"],
    ({ length }, reference, place) =>
      coarse(length) && (length.high > 1 || place.next - place.at > 3)
        ? {
            period: spanOf(dayOf(shifted(reference.today, length, -1).from), dayOf(reference.today)),
            direction: "past",
            sure: 0.8,
          }
        : undefined,
  ),
  ...rule(
    "lasting-now",
    [
      "for <length> now",
      "<length> now",
      "been <length>",
      "for? <length> so far",
      "<length> and counting|running|holding",
      "for the? last|past <length>",
      "going on <length>",
      "<length> already",
      "been <length> since",
      "<length> since",
    ],
    ({ length }, reference, place) => (recurs(place) ? undefined : held(length, reference, 0.85)),
  ),
  ...rule(
    "lasting-for",
    [
      "for <length>",
      "lasted <length>",
      "held <length>",
      "held for <length>",
      "held up <length>",
      "held up for <length>",
      "lasted for <length>",
      "good for <length>",
      "after <length>",
      "inside|within <length>",
      "<length> later|in",
    ],
    ({ length }, reference, place) => (recurs(place) ? undefined : held(length, reference, 0.55)),
  ),
  ...rule("lasting-bare", ["<length>"], ({ length }, reference, place) =>
    recurs(place) ||
    ["a", "an"].includes(place.tokens[place.at]?.word ?? "") ||
    NOT_LASTING.has(wordAfter(place))
      ? undefined
      : held(length, reference, 0.25),
  ),
];
