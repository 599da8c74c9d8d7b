import type { ComponentId } from "../../shared/vocabulary.ts";
import { CLAIMS, DROP, PLACE_INDEX } from "../lexicon/lexicon.ts";
import { singular } from "../lexicon/tokens.ts";
import type { Clause } from "./clauses.ts";
import type { Corrected } from "./corrections.ts";
import type { Deed } from "./deed.ts";
import type { Scan, Stretch } from "./scan.ts";
import { DETERMINERS } from "./words.ts";

/** What the rules about components look at. */
export type Ground = {
  readonly scan: Scan;
  readonly clauses: readonly Clause[];
  readonly index: Int32Array;
  readonly deeds: readonly Deed[];
  readonly fixed: Corrected;
  readonly placeTokens: ReadonlySet<number>;
  /** Prepositions that belong to something else: "all in", "looked over". */
  readonly takenTokens: ReadonlySet<number>;
  /** Tokens that are not told of as ours and now: questions, other people's rigs. */
  readonly muted: Uint8Array;
};

export const wordAt = (scan: Scan, at: number): string => scan.tokens[at]?.norm ?? "";

const GOES_ON = new Set(
  "open up together down off out away through over to into again now there here at on in by under behind beside next where".split(
    " ",
  ),
);
const BEFORE_SIDE = new Set(["the", "my", "our", "on", "far", "front", "rear", "back"]);

const LEFT_BY = new Set(
  "i we he she they you ive weve id had have has is was were are be been whats nothing none anything something bit".split(
    " ",
  ),
);
const LEFT_OF = new Set(["no", "any", "enough", "little", "more", "some", "what"]);
const BEHIND_LEFT = new Set(
  "and so but in over to from at it the that them this my our us me alone out off on open behind . ,".split(
    " ",
  ),
);

/** "I had no poly left", "what was left in the tub": over, and no side. */
const isLeftOver = (scan: Scan, at: number): boolean =>
  (LEFT_BY.has(wordAt(scan, at - 1)) || LEFT_OF.has(wordAt(scan, at - 2))) &&
  (at + 1 >= scan.tokens.length || BEHIND_LEFT.has(wordAt(scan, at + 1)));

/** "Cracked right back open", "right behind the axle": how, or how near, and no side. */
const isNoSide = (scan: Scan, at: number): boolean => {
  if (wordAt(scan, at) === "left") return isLeftOver(scan, at);
  if (wordAt(scan, at) === "back") return wordAt(scan, at - 1) === "right" && isNoSide(scan, at - 1);
  if (wordAt(scan, at) !== "right" || BEFORE_SIDE.has(wordAt(scan, at - 1))) return false;
  return GOES_ON.has(wordAt(scan, wordAt(scan, at + 1) === "back" ? at + 2 : at + 1));
};

export const placeTokensOf = (scan: Scan): Set<number> => {
  const tokens = tokensOf(PLACE_INDEX.all(scan.tokens, false));
  for (const at of tokens) if (isNoSide(scan, at)) tokens.delete(at);
  return tokens;
};

/** Every token index in some stretches. */
export const tokensOf = (stretches: readonly Stretch[]): Set<number> => {
  const tokens = new Set<number>();
  for (const { from, to } of stretches) for (let at = from; at < to; at++) tokens.add(at);
  return tokens;
};

export const clauseAt = ({ clauses, index }: Pick<Ground, "clauses" | "index">, at: number): Clause =>
  clauses[index[at] ?? 0] ?? { from: 0, to: 0, hard: true, subordinate: false };

/** Index of the first word to the left that is no determiner, place or plain adjective. */
export const leftOf = ({ scan, placeTokens }: Ground, at: number, floor: number): number => {
  let left = at - 1;
  while (left >= floor && at - left < 7) {
    const text = wordAt(scan, left);
    if (!DETERMINERS.has(text) && !DROP.has(text) && !placeTokens.has(left) && text !== "-") break;
    if (["this", "that", "these", "those"].includes(text) && DETERMINERS.has(wordAt(scan, left + 1))) break;
    left--;
  }
  return left;
};

const lastWord = (words: string): string => singular(words.split(" ").at(-1) ?? words);

/** Whether a word said while speaking of a component is a part of it ("the battery" of a smoke alarm). */
export const isPartOf = (component: ComponentId, words: string): boolean => {
  const claims = CLAIMS.get(component);
  if (claims === undefined) return false;
  return (
    claims.has(words) || words.split(" ").every((word) => claims.has(word) || claims.has(lastWord(word)))
  );
};
