import { plainWords } from "../../shared/memory/words.ts";
import lexicon from "../lexicon/data/materials.json" with { type: "json" };

/** Classes whose words hardly ever name a thing of the rig itself. */
const CLASSES = [
  "sealant",
  "tape",
  "adhesive",
  "resin",
  "cloth",
  "lubricant",
  "fluid",
  "cleaner",
  "paint",
  "timber",
  "fastener",
] as const;

const HEADS: ReadonlySet<string> = new Set(
  CLASSES.flatMap((name) => lexicon.heads[name]).map((head) => plainWords(head).join(" ")),
);
const LONGEST = 3;

const longestAt = (words: readonly string[], from: number): number => {
  for (let length = Math.min(LONGEST, words.length - from); length > 0; length--) {
    if (HEADS.has(words.slice(from, from + length).join(" "))) return length;
  }
  return 0;
};

/** The stuff named in a text of plain words, as said. */
export const stuffIn = (words: readonly string[]): readonly string[] => {
  const found: string[] = [];
  for (let at = 0; at < words.length; at++) {
    const length = longestAt(words, at);
    if (length === 0) continue;
    found.push(words.slice(at, at + length).join(" "));
    at += length - 1;
  }
  return found;
};
