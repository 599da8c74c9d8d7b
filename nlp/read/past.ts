import irregular from "../lexicon/data/irregular-verbs.json" with { type: "json" };
import { isPastForm } from "../lexicon/lexicon.ts";

const PAST: ReadonlySet<string> = new Set(irregular.verbs.flatMap(([, past = ""]) => past.split("|")));

/** A word that is the past of a verb by its look or by the lexicon. */
export const looksPast = (word: string): boolean =>
  PAST.has(word) || isPastForm(word) || (word.length > 4 && word.endsWith("ed"));
