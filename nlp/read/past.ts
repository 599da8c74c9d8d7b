import irregular from "../lexicon/data/irregular-verbs.json" with { type: "json" };
import { isPastForm } from "../lexicon/lexicon.ts";

/** "Fit", "cut", "put": the past looks as the verb itself. */
const SAME_AS_BASE: ReadonlySet<string> = new Set(
  irregular.verbs.flatMap(([base = "", past = ""]) => (past.split("|").includes(base) ? [base] : [])),
);
const PAST: ReadonlySet<string> = new Set(irregular.verbs.flatMap(([, past = ""]) => past.split("|")));

/** A word that is the past of a verb by its look or by the lexicon. */
export const looksPast = (word: string): boolean =>
  PAST.has(word) || isPastForm(word) || (word.length > 4 && word.endsWith("ed"));

/** A word that can be nothing but the past of a verb. */
export const isSurelyPast = (word: string): boolean => looksPast(word) && !SAME_AS_BASE.has(word);
