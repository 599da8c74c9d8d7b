import { compile, PatternIndex } from "../lexicon/pattern.ts";
import data from "./dropped.json" with { type: "json" };
import type { Scan, Stretch } from "./scan.ts";

const indexOf = (phrases: readonly string[]): PatternIndex<null> =>
  new PatternIndex(phrases.map((source) => compile(source, null)));

const WEIGHED = indexOf(data.weighed);
const LET_BE = indexOf(data.letBe);

/** As far, in words, as what was weighed may stand before it was let be. */
const NEAR = 40;

/** "Nearly ordered a new awning, had the card out, and thought better of it": what was weighed, told up to its being let be. */
export const droppedIn = ({ tokens }: Scan): Stretch[] => {
  const ends = LET_BE.all(tokens, false);
  if (ends.length === 0) return [];
  const starts = WEIGHED.all(tokens, false);
  return ends.flatMap(({ from: at, to }) => {
    const start = starts.find(({ from, to: end }) => end <= at && at - from <= NEAR);
    return start === undefined ? [] : [{ from: start.from, to }];
  });
};
