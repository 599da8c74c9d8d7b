import { isAmong } from "../context.ts";
import { either, future, past } from "../meaning.ts";
import { isSeason, restsThere } from "../meant.ts";
import { about, type Period, seasonOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { lastWhole, nearest, nextWhole, seasonIn } from "../resolve.ts";
import { type Place, rule, wordBefore } from "../rule.ts";
import { isApostropheYear } from "../slots.ts";

/** "summer '22", "spring 24" at the end of what is said. */
const isShortYear = (place: Place): boolean => {
  const token = place.tokens[place.next - 1];
  return isApostropheYear(token) || (/^\d\d$/u.test(token?.raw ?? "") && restsThere(place));
};

/** The season running today. */
const current = (season: number, reference: Reference): Period | undefined => {
  const { today } = reference;
  return [today.year, today.year - 1]
    .map((year) => seasonOf(season, year, reference.hemisphere))
    .find(({ from, last }) => today.since(from).days >= 0 && last.since(today).days >= 0);
};
/** In its first weeks nobody speaks of a season as over, nor in its last as to come. */
const MARGIN_DAYS = 21;
const near = (season: number, reference: Reference): Period => {
  const { today, prefer } = reference;
  const shifted =
    prefer === "past" ? today.subtract({ days: MARGIN_DAYS }) : today.add({ days: MARGIN_DAYS });
  return nearest({ today: shifted, prefer }, seasonIn(season, reference));
};
const lastOver = (season: number, reference: Reference): Period =>
  lastWhole(reference.today, seasonIn(season, reference));
const inYear = (season: number, year: number, { hemisphere }: Reference): Period =>
  seasonOf(season, year, hemisphere);

export const SEASON_RULES = [
  ...rule(
    "season",
    [
      "in|over|during|through|throughout|at the? <season>",
      "back in the? <season>",
      "early|late|mid <season>",
    ],
    ({ season }, reference, place) => (isSeason(place) ? either(near(season, reference), 0.9) : undefined),
  ),
  ...rule(
    "season-long",
    [
      "all that? <season>",
      "all this|last? past? <season> long?",
      "all through|over the? <season>",
      "the whole <season>",
      "the whole of? this|last|the? <season>",
    ],
    ({ season }, reference, place) => {
      const last = place.tokens
        .slice(place.at, place.next)
        .some(({ word }) => word === "last" || word === "past");
      const period = last
        ? lastOver(season, reference)
        : nearest({ ...reference, prefer: "past" }, seasonIn(season, reference));
      return {
        period: about(period),
        role: "lasting",
        lasting: { count: 1, unit: "seasons" },
        direction: "past",
        sure: 0.5,
      };
    },
  ),
  ...rule("season-for", ["for the? <season>"], ({ season }, reference, place) =>
    isSeason(place) ? either(near(season, reference), 0.4) : undefined,
  ),
  ...rule("season-alone", ["the? <season>"], ({ season }, reference, place) =>
    isAmong("leads", wordBefore(place)) && isSeason(place) ? either(near(season, reference), 0.8) : undefined,
  ),
  ...rule(
    "last-season",
    ["in|over|during|back? last|past|previous <season>", "in|over|during? this past|last <season>"],
    ({ season }, reference, place) =>
      isSeason(place, true) ? past(lastOver(season, reference), 0.92) : undefined,
  ),
  ...rule(
    "season-just-gone",
    ["in|over|during|through? the? <season> just gone|past", "in|over|during? the|this? <season> gone"],
    ({ season }, reference) => past(lastOver(season, reference), 0.9),
  ),
  ...rule("season-before-last", ["in|over|during? the? <season> before last"], ({ season }, reference) =>
    past(inYear(season, lastOver(season, reference).from.year - 1, reference), 0.95),
  ),
  ...rule("seasons-ago", ["<n> <seasons> ago|back"], ({ n, seasons }, reference) =>
    Number.isInteger(n.low)
      ? past(inYear(seasons, lastOver(seasons, reference).from.year - n.low + 1, reference), 0.9)
      : undefined,
  ),
  ...rule(
    "season-years-ago",
    ["<length> ago ,back? in the? <season>", "in? the? <season> <length> ago|back"],
    ({ length, season }, reference) =>
      length.unit === "year" && Number.isInteger(length.low)
        ? past(inYear(season, reference.today.year - length.low, reference), 0.9)
        : undefined,
  ),
  ...rule(
    "this-season",
    ["in|over|during? this <season>", "so far this <season>"],
    ({ season }, reference, place) =>
      isSeason(place, true) ? either(current(season, reference) ?? near(season, reference), 0.9) : undefined,
  ),
  ...rule(
    "next-season",
    ["in? next <season>", "in? this? coming|upcoming <season>", "in? this next <season>", "come <season>"],
    ({ season }, { today, ...reference }) =>
      future(nextWhole(today, seasonIn(season, { today, ...reference })), 0.92),
  ),
  ...rule(
    "season-year",
    ["in|over|during? the? <season> of <loose>", "in|over|during? the? <season> <year>"],
    (slots, reference) =>
      either(inYear(slots.season, "loose" in slots ? slots.loose : slots.year, reference), 0.97),
  ),
  ...rule(
    "season-that-year",
    ["in|over|during? the? <season> of? that year", "in|over|during? the? <season> of the same year"],
    ({ season }, reference, { before }) => past(before && inYear(season, before.from.year, reference), 0.9),
  ),
  ...rule("season-short-year", ["in? the? <season> <loose>"], ({ season, loose }, reference, place) =>
    isShortYear(place) ? either(inYear(season, loose, reference), 0.97) : undefined,
  ),
  ...rule(
    "season-years",
    ["in|over|during? the? <season> of? <loose> -|/|to|into <loose2>"],
    ({ season, loose, loose2 }, reference) =>
      loose2 === loose + 1 ? either(inYear(season, loose, reference), 0.97) : undefined,
  ),
  ...rule(
    "season-last-year",
    ["in|over? the? <season> of? last year", "last year ,in|over? the? <season>"],
    ({ season }, reference) => past(inYear(season, reference.today.year - 1, reference), 0.92),
  ),
  ...rule("season-this-year", ["in|over? the? <season> of? this year"], ({ season }, reference) =>
    either(inYear(season, reference.today.year, reference), 0.92),
  ),
  ...rule(
    "season-next-year",
    ["in? the? <season> of? next year", "next year ,in the? <season>"],
    ({ season }, reference) => future(inYear(season, reference.today.year + 1, reference), 0.92),
  ),
  ...rule(
    "season-year-before-last",
    ["in? the? <season> of the year before last", "the year before last ,in the? <season>"],
    ({ season }, reference) => past(inYear(season, reference.today.year - 2, reference), 0.92),
  ),
];
