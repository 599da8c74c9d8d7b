import { tellingStems } from "../../shared/memory/words.ts";
import type { Token } from "../lexicon/tokens.ts";
import type { Stretch } from "../read/scan.ts";

/** Words after which any other word may be what went in: "it was vinegar". */
const LEADS: ReadonlySet<string> = new Set(
  "was were wasnt werent used using meant with is its isnt not actually of said".split(" "),
);
const LONGEST = 3;

const NO_STUFF: ReadonlySet<string> = new Set(
  "they them that this these those i we he she you are is am was be been have has had gone right wrong done there here now still out off up down just only really actually because cause when where why how thinking".split(
    " ",
  ),
);

/** "It was sitting on the counter": what something does or had done to it is nothing that went in. */
const isNoStuff = (words: readonly string[], at: number): boolean => {
  const word = words[at] ?? "";
  return NO_STUFF.has(word) || (/(?:ing|ed)$/.test(word) && BE.has(words[at - 1] ?? ""));
};
const BE: ReadonlySet<string> = new Set("was were wasnt werent is its isnt be been".split(" "));

const OWNERS: ReadonlySet<string> = new Set("the a my our his her some that".split(" "));

/** Words that no list knows and that nothing `known` covers, where stuff may be named: "not bleach, I meant vinegar". */
export const unknownStuffsIn = (tokens: readonly Token[], known: readonly Stretch[]): Stretch[] => {
  const words = tokens.map(({ norm }) => norm);
  const isFree = (at: number): boolean =>
    tokens[at]?.kind === "word" &&
    !isNoStuff(words, at) &&
    tellingStems(words[at] ?? "").size > 0 &&
    !known.some((each) => each.from <= at && at < each.to);
  return words.flatMap((word, at): Stretch[] => {
    if (!LEADS.has(word)) return [];
    const from = OWNERS.has(words[at + 1] ?? "") ? at + 2 : at + 1;
    let to = from;
    while (to < from + LONGEST && isFree(to)) to++;
    return to === from ? [] : [{ from, to }];
  });
};
