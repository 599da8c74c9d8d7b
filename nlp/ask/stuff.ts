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
/** Words that say which kind of a stuff: "lap sealant", "stainless screws". */
const KINDS: ReadonlySet<string> = new Set(lexicon.keep.map((word) => plainWords(word).join(" ")));
const FASTENERS: ReadonlySet<string> = new Set(
  lexicon.heads.fastener.map((head) => plainWords(head).join(" ")),
);
const LONGEST = 3;

const DEFINITE: ReadonlySet<string> = new Set("the my our those these his her its".split(" "));
const USES: ReadonlySet<string> = new Set("use used using with put of fit fitted in added".split(" "));
/** "The nuts on the rims", "had the pin greased": a part that is there, and nothing that went in. */
const isThere = (words: readonly string[], from: number, to: number): boolean =>
  FASTENERS.has(words.slice(from, to).join(" ")) &&
  DEFINITE.has(words[from - 1] ?? "") &&
  !words.slice(Math.max(0, from - 3), from - 1).some((word) => USES.has(word));

const kindBefore = (words: readonly string[], at: number): number => {
  let from = at;
  while (from > 0 && KINDS.has(words[from - 1] ?? "")) from--;
  return from;
};

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
    if (length === 0 || isThere(words, at, at + length)) continue;
    found.push(words.slice(kindBefore(words, at), at + length).join(" "));
    at += length - 1;
  }
  return found;
};
