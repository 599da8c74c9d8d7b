import { compile, PatternIndex } from "../lexicon/pattern.ts";
import type { Token } from "../lexicon/tokens.ts";
import data from "./dropped.json" with { type: "json" };
import type { Scan, Stretch } from "./scan.ts";

const indexOf = (phrases: readonly string[]): PatternIndex<null> =>
  new PatternIndex(phrases.map((source) => compile(source, null)));

const WEIGHED = indexOf(data.weighed);
const LET_BE = indexOf(data.letBe);
const SHOPPED = indexOf(data.shopped);
const LEFT_THERE = indexOf([...data.letBe, ...data.putBack]);

/** As far, in words, as what was weighed may stand before it was let be, and what was in the hand before it was put back. */
const NEAR = 25;
const NEAR_IN_SHOP = 45;

const between = (
  tokens: readonly Token[],
  opens: PatternIndex<null>,
  closes: PatternIndex<null>,
  near: number,
): Stretch[] => {
  const ends = closes.all(tokens, false);
  if (ends.length === 0) return [];
  const starts = opens.all(tokens, false);
  return ends.flatMap(({ from: at, to }) => {
    const start = starts.find(({ from, to: end }) => end <= at && at - from <= near);
    return start === undefined ? [] : [{ from: start.from, to }];
  });
};

/** "Nearly ordered a new awning, had the card out, and thought better of it": what was weighed, told up to its being let be. */
export const droppedIn = ({ tokens }: Scan): Stretch[] => [
  ...between(tokens, WEIGHED, LET_BE, NEAR),
  ...between(tokens, SHOPPED, LEFT_THERE, NEAR_IN_SHOP),
];
