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

export const placeTokensOf = (scan: Scan): Set<number> => tokensOf(PLACE_INDEX.all(scan.tokens, false));

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
