import { isAmong } from "../context.ts";
import { exposureOf, type Length, middleOf } from "../length.ts";
import type { Said } from "../numbers.ts";
import { about, isBefore, type Period, seasonOf, yearOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { type Meaning, type Place, rule, wordAfter, wordBefore } from "../rule.ts";
import { shifted } from "../shift.ts";

/** What has gone on for a length of time began that long ago, about. */
const held = (length: Length, { today }: Reference, place: Place, sure: number): Meaning | undefined => {
  const lasting = exposureOf(length);
  if (lasting === undefined || lasting.count === 0 || isAmong("recurring", wordBefore(place)))
    return undefined;
  if (isAmong("notLasting", wordAfter(place)) || wordAfter(place) === "ago") return undefined;
  return {
    period: about(shifted(today, middleOf(length), -1)),
    lasting,
    role: "lasting",
    direction: "past",
    sure,
  };
};

/** "A week" and "one day" alone are hardly ever how long something held. */
const isSingle = ({ low, high }: Length): boolean => low === 1 && high === 1;

const REACH = 5;
/** "It has been on there three weeks", not "we have been gone three weeks". */
const isHeld = (place: Place): boolean => {
  if (isAmong("waiting", wordBefore(place))) return false;
  for (let at = place.at; at > place.at - REACH && place.tokens[at]?.gap !== "stop"; at--)
    if (isAmong("holding", place.tokens[at - 1]?.word ?? "")) return true;
  return false;
};

/** The first of so many winters, the running one counted. */
const firstSeason = (season: number, count: number, { today, hemisphere }: Reference): Period => {
  const begun = [today.year, today.year - 1].map((year) => seasonOf(season, year, hemisphere));
  const last =
    begun.find(({ from }) => !isBefore(today, from)) ?? seasonOf(season, today.year - 2, hemisphere);
  return seasonOf(season, last.from.year - count + 1, hemisphere);
};

const seasonsHeld = (n: Said, period: Period, sure: number): Meaning | undefined =>
  Number.isInteger(n.low)
    ? {
        period: about(period),
        role: "lasting",
        lasting: { count: Math.floor((n.low + n.high) / 2), unit: "seasons" },
        direction: "past",
        sure,
      }
    : undefined;

export const LASTING_RULES = [
  ...rule(
    "lasting-winters",
    [
      "for|been|through? <n> <seasons> now|running|straight|already",
      "for? <n> <seasons> so far",
      "for|been|through|lasted|survived <n> <seasons>",
    ],
    ({ n, seasons }, reference) => seasonsHeld(n, firstSeason(seasons, Math.floor(n.low), reference), 0.8),
  ),
  ...rule(
    "lasting-seasons",
    [
      "for|been|through? <n> seasons now|running|straight|already",
      "for? <n> seasons so far",
      "for|been|through|lasted|survived <n> seasons",
    ],
    ({ n }, { today }) => seasonsHeld(n, yearOf(today.year - Math.floor(n.low)), 0.6),
  ),
  ...rule(
    "lasting-now",
    [
      "for? <length> now",
      "for? <length> so far",
      "for? <length> already",
      "been <length> now?",
      "held|lasted|survived|managed up|out? for? <length> now|already",
      "for? <length> and counting|running|holding|going",
      "for the? last|past <length>",
      "for? going on <length>",
      "been <length> since",
      "<length> since",
      "<length> strong",
    ],
    ({ length }, reference, place) => held(length, reference, place, 0.85),
  ),
  ...rule(
    "lasting-for",
    [
      "for <length>",
      "held|lasted|survived|managed up|out? for? <length>",
      "after <length>",
      "inside|within of? <length>",
      "<length> later|in|on",
    ],
    ({ length }, reference, place) =>
      held(length, reference, place, isAmong("waiting", wordBefore(place)) ? 0.3 : 0.55),
  ),
  ...rule("lasting-alone", ["<length>"], ({ length }, reference, place) =>
    isSingle(length) ? undefined : held(length, reference, place, isHeld(place) ? 0.6 : 0.25),
  ),
];
