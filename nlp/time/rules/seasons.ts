import { type Period, seasonOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { lastWhole, nearest, nextWhole, seasonIn } from "../resolve.ts";
import { type Place, rule, wordAfter, wordBefore } from "../rule.ts";

/** "spring" and "fall" are also things and deeds of a trailer. */
const SPRING_THINGS = new Set(
  "hanger hangers eye eyes shackle shackles pack packs bolt bolts perch plate plates clip clips seat seats mount mounts bushing bushings leaf steel loaded tension washer pin broke snapped sagged cracked started cleaning itself that rate arm in on under".split(
    " ",
  ),
);
const FALL_ON = new Set("off apart out down over through in on into asleep".split(" "));
const NOUN_BEFORE = new Set("leaf coil door torsion crack break rust a valve gas return ignition".split(" "));

const meantAsSeason = (place: Place, firm: boolean): boolean => {
  const word = place.tokens[place.next - 1]?.raw;
  if (word !== "spring" && word !== "fall") return true;
  if (NOUN_BEFORE.has(wordBefore(place))) return false;
  if (word === "fall") return !FALL_ON.has(wordAfter(place)) || firm;
  return !SPRING_THINGS.has(wordAfter(place)) || (firm && ["in", "on", "that"].includes(wordAfter(place)));
};
const found = (period: Period, direction: "past" | "future" | "either", sure: number) => ({
  period,
  direction,
  sure,
});

/** The season running today. */
const current = (season: number, reference: Reference): Period | undefined => {
  const { today } = reference;
  return [today.year, today.year - 1]
    .map((year) => seasonOf(season, year, reference.hemisphere))
    .find(({ from, last }) => today.since(from).days >= 0 && last.since(today).days >= 0);
};
const inYear = (season: number, year: number, { hemisphere }: Reference) =>
  seasonOf(season, year, hemisphere);

export const SEASONS_RULES = [
  ...rule(
    "season",
    [
      "in|over|during|through|throughout the? <season>",
      "back in the? <season>",
      "all <season>",
      "all through|over the? <season>",
      "the whole <season>",
      "come <season>",
      "early|late|mid <season>",
      "for the <season>",
      "at the? <season>",
    ],
    ({ season }, reference, place) =>
      meantAsSeason(place, false)
        ? found(nearest(reference, seasonIn(season, reference)), "either", 0.9)
        : undefined,
  ),
  ...rule("season-bare", ["<season>", "the <season>"], ({ season }, reference, place) => {
    const before = wordBefore(place);
    const fits = [
      "since",
      "until",
      "by",
      "before",
      "after",
      "of",
      "early",
      "late",
      "and",
      "or",
      "between",
      "in",
      "to",
      "from",
      "around",
      "about",
      "mid",
      "till",
    ].includes(before);
    return fits && meantAsSeason(place, false)
      ? found(nearest(reference, seasonIn(season, reference)), "either", 0.8)
      : undefined;
  }),
  ...rule(
    "last-season",
    ["in|over|during|all|back? last|past|previous <season>", "in|over|during? this past|last <season>"],
    ({ season }, reference, place) =>
      meantAsSeason(place, true)
        ? found(lastWhole(reference.today, seasonIn(season, reference)), "past", 0.92)
        : undefined,
  ),
  ...rule("season-before-last", ["in|over|during? the? <season> before last"], ({ season }, reference) => {
    const last = lastWhole(reference.today, seasonIn(season, reference));
    return found(inYear(season, last.from.year - 1, reference), "past", 0.95);
  }),
  ...rule("seasons-ago", ["<n> <seasons> ago|back"], ({ n, seasons }, reference) => {
    const last = lastWhole(reference.today, seasonIn(seasons, reference));
    return Number.isInteger(n.low)
      ? found(inYear(seasons, last.from.year - n.low + 1, reference), "past", 0.9)
      : undefined;
  }),
  ...rule(
    "this-season",
    ["in|over|during|all? this <season>", "so far this <season>"],
    ({ season }, reference, place) =>
      meantAsSeason(place, true)
        ? found(current(season, reference) ?? nearest(reference, seasonIn(season, reference)), "either", 0.9)
        : undefined,
  ),
  ...rule(
    "next-season",
    ["in? next <season>", "in? this? coming <season>", "in? this next <season>"],
    ({ season }, reference) => found(nextWhole(reference.today, seasonIn(season, reference)), "future", 0.92),
  ),
  ...rule(
    "season-year",
    ["in|over|during? the? <season> of <loose>", "in|over|during? the? <season> <year>"],
    (slots, reference) => {
      const year = "loose" in slots ? slots.loose : slots.year;
      return found(inYear(slots.season, year, reference), "either", 0.97);
    },
  ),
  ...rule(
    "season-last-year",
    ["in|over? the? <season> of? last year", "last year in|over the <season>"],
    ({ season }, reference) => found(inYear(season, reference.today.year - 1, reference), "past", 0.92),
  ),
  ...rule("season-this-year", ["in? the? <season> of? this year"], ({ season }, reference) =>
    found(inYear(season, reference.today.year, reference), "either", 0.92),
  ),
  ...rule(
    "season-next-year",
    ["in? the? <season> of? next year", "next year in the <season>"],
    ({ season }, reference) => found(inYear(season, reference.today.year + 1, reference), "future", 0.92),
  ),
  ...rule(
    "season-of-year-before-last",
    ["in? the? <season> of the year before last"],
    ({ season }, reference) => found(inYear(season, reference.today.year - 2, reference), "past", 0.92),
  ),
];
