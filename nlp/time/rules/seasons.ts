import { isAmong } from "../context.ts";
import { either, future, past } from "../meaning.ts";
import { isSeason } from "../meant.ts";
import { type Period, seasonOf } from "../period.ts";
import type { Reference } from "../reference.ts";
import { lastWhole, nearest, nextWhole, seasonIn } from "../resolve.ts";
import { rule, wordBefore } from "../rule.ts";
import { isApostropheYear } from "../slots.ts";

/** The season running today. */
const current = (season: number, reference: Reference): Period | undefined => {
  const { today } = reference;
  return [today.year, today.year - 1]
    .map((year) => seasonOf(season, year, reference.hemisphere))
    .find(({ from, last }) => today.since(from).days >= 0 && last.since(today).days >= 0);
};
const near = (season: number, reference: Reference): Period =>
  nearest(reference, seasonIn(season, reference));
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
      "all|the whole? <season>",
      "all through|over the? <season>",
      "early|late|mid <season>",
    ],
    ({ season }, reference, place) => (isSeason(place) ? either(near(season, reference), 0.9) : undefined),
  ),
  ...rule("season-for", ["for the? <season>"], ({ season }, reference, place) =>
    isSeason(place) ? either(near(season, reference), 0.4) : undefined,
  ),
  ...rule("season-alone", ["the? <season>"], ({ season }, reference, place) =>
    isAmong("leads", wordBefore(place)) && isSeason(place) ? either(near(season, reference), 0.8) : undefined,
  ),
  ...rule(
    "last-season",
    ["in|over|during|all|back? last|past|previous <season>", "in|over|during? this past|last <season>"],
    ({ season }, reference, place) =>
      isSeason(place, true) ? past(lastOver(season, reference), 0.92) : undefined,
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
    "this-season",
    ["in|over|during|all? this <season>", "so far this <season>"],
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
  ...rule("season-apostrophe-year", ["in? the? <season> <loose>"], ({ season, loose }, reference, place) =>
    isApostropheYear(place.tokens[place.next - 1])
      ? either(inYear(season, loose, reference), 0.97)
      : undefined,
  ),
  ...rule(
    "season-years",
    ["in|over|during? the? <season> of? <loose> -|/|to|into <loose2>"],
    ({ season, loose, loose2 }, reference) =>
      loose2 === loose + 1 ? either(inYear(season, loose, reference), 0.97) : undefined,
  ),
  ...rule(
    "season-last-year",
    ["in|over? the? <season> of? last year", "last year ,in|over the? <season>"],
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
