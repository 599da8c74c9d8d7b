import { tellingStems } from "../../shared/memory/words.ts";
import type { Token } from "../lexicon/tokens.ts";
import type { Stretch } from "../read/scan.ts";
import { isContainer } from "./containers.ts";
import data from "./stuff-words.json" with { type: "json" };

/** Words after which any other word may be what went in: "it was vinegar". */
const LEADS: ReadonlySet<string> = new Set(data.leads);
const LONGEST = 3;

const NO_STUFF: ReadonlySet<string> = new Set(data.noStuff);

/** "It was sitting on the counter": what something does or had done to it is nothing that went in. */
const isNoStuff = (words: readonly string[], at: number): boolean => {
  const word = words[at] ?? "";
  return NO_STUFF.has(word) || (/(?:ing|ed)$/.test(word) && BE.has(words[at - 1] ?? ""));
};
const BE: ReadonlySet<string> = new Set(data.be);

const OWNERS: ReadonlySet<string> = new Set(data.owners);

/** "Methylated spirit, rather", "tung oil it says on the tin": what is said behind stuff that opens a message. */
const TELLS_STUFF = /^,? ?(?:rather|instead|it says|it said|is what it|was what|it was (?:i|we) used)\b/;
const followsAsStuff = (words: readonly string[]): boolean => TELLS_STUFF.test(words.join(" "));

/** Words that no list knows and that nothing `known` covers, where stuff may be named: "not bleach, I meant vinegar". */
export const unknownStuffsIn = (tokens: readonly Token[], known: readonly Stretch[]): Stretch[] => {
  const words = tokens.map(({ norm }) => norm);
  const isFree = (at: number): boolean =>
    tokens[at]?.kind === "word" &&
    !isNoStuff(words, at) &&
    !isContainer(words[at] ?? "") &&
    tellingStems(words[at] ?? "").size > 0 &&
    !known.some((each) => each.from <= at && at < each.to);
  const freeFrom = (from: number): number => {
    let to = from;
    while (to < from + LONGEST && isFree(to)) to++;
    return to;
  };
  const opening = freeFrom(0);
  const before: Stretch[] =
    opening > 0 && followsAsStuff(words.slice(opening)) ? [{ from: 0, to: opening }] : [];
  const behind = words.flatMap((word, at): Stretch[] => {
    if (!LEADS.has(word)) return [];
    const named = OWNERS.has(words[at + 1] ?? "") ? at + 2 : at + 1;
    const from = isContainer(words[named] ?? "") && words[named + 1] === "of" ? named + 2 : named;
    const to = freeFrom(from);
    return to === from ? [] : [{ from, to }];
  });
  return [...before, ...behind];
};
