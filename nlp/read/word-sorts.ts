import { isPlainVerb } from "../lexicon/lexicon.ts";
import type { Ground } from "./ground.ts";
import { looksPast } from "./past.ts";
import type { Stretch } from "./scan.ts";
import { AUXILIARIES, DETERMINERS, NEGATIVES, PREPOSITIONS, SUBJECTS } from "./words.ts";

/** Words that say that a thing was not there before. */
export const NEWNESS: ReadonlySet<string> = new Set(["new", "fresh", "replacement", "another", "second"]);
const JOINING = new Set(["and", "or", "but"]);

const plainSort = (word: string, placed: boolean): string => {
  if (NEWNESS.has(word)) return "n";
  if (NEGATIVES.has(word)) return "N";
  if (AUXILIARIES.has(word)) return "A";
  if (SUBJECTS.has(word)) return "S";
  if (DETERMINERS.has(word)) return "d";
  if (PREPOSITIONS.has(word)) return "p";
  if (JOINING.has(word)) return "&";
  if (looksPast(word)) return "v";
  if (word.endsWith("ing")) return "g";
  if (isPlainVerb(word)) return "b";
  return placed ? "w" : "o";
};

/**
 * What sort of word each token is, as one letter: D a known deed, t time, $ amount, J verdict, C component, m material,
 * F fault, # number, then closed classes and guesses by form; a comma for every mark.
 */
export const wordSorts = ({ scan, deeds, placeTokens }: Ground): string[] => {
  const sorts = scan.tokens.map((token, at) =>
    token.kind === "mark" ? "," : token.kind === "number" ? "#" : plainSort(token.norm, placeTokens.has(at)),
  );
  const mark = (refs: readonly Stretch[], sort: string): void => {
    for (const { from, to } of refs)
      for (let at = from; at < to; at++) if (sorts[at] !== ",") sorts[at] = sort;
  };
  mark(scan.faults, "F");
  mark(scan.materials, "m");
  mark(scan.components, "C");
  mark(scan.verdicts, "J");
  mark(scan.amounts, "$");
  mark(scan.times, "t");
  for (const deed of deeds) sorts[deed.at] = "D";
  return sorts;
};
