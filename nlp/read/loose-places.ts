import type { Scan, Stretch } from "./scan.ts";
import { listed } from "./words.ts";

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
