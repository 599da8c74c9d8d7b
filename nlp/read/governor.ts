import { DROP, KEEP, plainTag } from "../lexicon/lexicon.ts";
import { wordAt } from "./ground.ts";
import type { Scan } from "./scan.ts";
import { DETERMINERS, listed, PREPOSITIONS, SUBJECTS } from "./words.ts";

const QUANTITIES = listed("phrasesQuantities");
const MEANS = listed("objectsMeans");
/** Most words of no known kind that may describe a noun. */
const MOST_UNKNOWN = 2;

/** "A new one": stands for a thing of its own. */
const isPronoun = (scan: Scan, at: number): boolean =>
  /^ones?$/.test(wordAt(scan, at)) &&
  (DROP.has(wordAt(scan, at - 1)) || DETERMINERS.has(wordAt(scan, at - 1)) || KEEP.has(wordAt(scan, at - 1)));

const passes = (scan: Scan, at: number): boolean => {
  const text = wordAt(scan, at);
  if (isPronoun(scan, at)) return false;
  return (
    DETERMINERS.has(text) ||
    DROP.has(text) ||
    scan.tokens[at]?.kind === "number" ||
    QUANTITIES.has(text) ||
    ["of", "-", "/"].includes(text)
  );
};

const walk = (scan: Scan, from: number): number => {
  let left = from;
  while (left >= 0 && passes(scan, left)) left--;
  return left;
};

const isAdjective = (scan: Scan, at: number): boolean =>
  /^(?:Adjective|Comparative)$/.test(plainTag(wordAt(scan, at)));

/** Nouns may describe a noun right before it; an adjective may stand before them, not after. */
const describes = (scan: Scan, at: number, afterAdjective: boolean): boolean => {
  const text = wordAt(scan, at);
  return (
    scan.tokens[at]?.kind === "word" &&
    !PREPOSITIONS.has(text) &&
    !SUBJECTS.has(text) &&
    !/(?:ed|ing)$/.test(text) &&
    (isAdjective(scan, at) ||
      (!afterAdjective && (KEEP.has(text) || /^(?:Singular|Plural|Noun|undefined)$/.test(plainTag(text)))))
  );
};

/**
 * Index of the word that governs a noun phrase: the first to the left that is no determiner, number, quantity or adjective.
 * A word of no known kind counts as an adjective only where a determiner, number or word of means stands before it.
 */
export const governor = (scan: Scan, at: number): number => {
  const plain = walk(scan, at - 1);
  let left = plain;
  let afterAdjective = false;
  for (let skipped = 0; skipped < MOST_UNKNOWN && left >= 0; skipped++) {
    if (isPronoun(scan, left) || !describes(scan, left, afterAdjective)) break;
    afterAdjective ||= isAdjective(scan, left);
    const next = walk(scan, left - 1);
    if (next < left - 1 || MEANS.has(wordAt(scan, next))) return next;
    left = next;
  }
  return plain;
};
