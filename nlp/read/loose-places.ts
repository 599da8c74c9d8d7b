import type { ComponentRef } from "../lexicon/components.ts";
import { PLACES } from "../lexicon/lexicon.ts";
import type { Scan, Stretch } from "./scan.ts";
import { DETERMINERS, isClosed, listed } from "./words.ts";

const ALONE = listed("whereLooseWords");
const COUNTS = listed("whereLooseCounts");
const AFTER_COUNTS = listed("whereLooseAfterCounts");
const BEFORE = listed("whereLooseBefore");
const THINGS = listed("whereLooseThings");

/**
 * Words that may tell which of several things is meant, or where it is, only beside the thing: "both", "the spare",
 * "o/s", "number 2", "under it".
 */
export const loosePlaces = ({ tokens }: Scan, { from, to }: Stretch): Stretch[] => {
  const word = (at: number): string => tokens[at]?.norm ?? "";
  const longest = (at: number): number => {
    if (BEFORE.has(word(at)) && THINGS.has(word(at + 1))) return 2;
    if (COUNTS.has(word(at)) && AFTER_COUNTS.has(word(at + 1))) return 2;
    if (word(at + 1) === "/" && word(at + 2) === "s" && ["o", "n"].includes(word(at))) return 3;
    if (["#", "number", "no"].includes(word(at)) && tokens[at + 1]?.kind === "number") return 2;
    let size = 0;
    while (ALONE.has(word(at + size))) size++;
    return size > 0 ? size : COUNTS.has(word(at)) ? 1 : 0;
  };
  const found: Stretch[] = [];
  for (let at = from; at < Math.min(to, tokens.length); at++) {
    const size = longest(at);
    if (size === 0) continue;
    found.push({ from: at, to: at + size });
    at += size - 1;
  }
  return found;
};

const isName = (word: string): boolean => word !== "" && !isClosed(word) && !PLACES.notPlaces.has(word);

const BESIDE = new Set([...listed("whereLandmarks"), ...listed("whereAt"), "to"]);

/** "At the join", "by the kids bunk": any noun behind a word of place and an article. */
export const placesByNoun = ({ tokens }: Scan, { from, to }: Stretch): Stretch[] => {
  const word = (at: number): string => (tokens[at]?.kind === "word" ? tokens[at].norm : "");
  const found: Stretch[] = [];
  for (let at = Math.max(0, from); at < Math.min(to, tokens.length); at++) {
    if (!BESIDE.has(word(at))) continue;
    const the = ["to", "of"].includes(word(at + 1)) ? at + 2 : at + 1;
    if (!DETERMINERS.has(word(the)) || !isName(word(the + 1))) continue;
    const further = word(the + 2);
    const isPart = PLACES.spots.has(further) || PLACES.things.has(further) || further === "side";
    found.push({ from: at, to: the + (isPart ? 3 : 2) });
  }
  return found;
};

/** "The tack room light", "ems side": words between an article and the name of a thing. */
export const placesBeforeName = ({ tokens }: Scan, { from }: ComponentRef): Stretch[] => {
  const word = (at: number): string => (tokens[at]?.kind === "word" ? tokens[at].norm : "");
  for (const size of [1, 2]) {
    if (!isName(word(from - size))) return [];
    if (DETERMINERS.has(word(from - size - 1))) return [{ from: from - size, to: from }];
  }
  return [];
};
