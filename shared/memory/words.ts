import { remembered } from "../remembered.ts";
import table from "./words.json" with { type: "json" };

const EMPTY: ReadonlySet<string> = new Set(table.empty);
const SAME: ReadonlyMap<string, string> = new Map(Object.entries(table.same));

/** As many words and notes as are kept with what was made of them. */
const WORDS = 20_000;
const NOTES = 500;

const ENDINGS: readonly (readonly [RegExp, string])[] = [
  [/ies$/, "y"],
  [/(ch|sh|x|z|ss)es$/, "$1"],
  [/([^su])s$/, "$1"],
];

const singular = (word: string): string => {
  if (word.length < 4) return word;
  const ending = ENDINGS.find(([pattern]) => pattern.test(word));
  return ending === undefined ? word : word.replace(ending[0], ending[1]);
};

/** One word, lower case, without its plural and in one spelling: "Tyres" and "tire" are the same. */
export const plainWord = remembered((word) => {
  const bare = singular(word.toLowerCase().replace(/['’]/g, ""));
  return SAME.get(bare) ?? bare;
}, WORDS);

/** The words of a text in order, each as a plain word. */
export const plainWords = (text: string): readonly string[] =>
  (text.match(/[\p{L}\p{N}][\p{L}\p{N}'’]*/gu) ?? []).map(plainWord);

const STEM_ENDINGS = /(?:ing|ed|er|y|e)$/;

/** Cut down so that "leaking", "leaked" and "leaky" meet. Not a word any more. */
export const stemOf = remembered((word) => {
  const cut = word.length > 4 ? word.replace(STEM_ENDINGS, "") : word;
  return cut.replace(/(.)\1$/, "$1");
}, WORDS);

/** The stems that tell one thing or trouble from another; small words are left out. */
export const tellingStems: (text: string) => ReadonlySet<string> = remembered(
  (text) =>
    new Set(
      plainWords(text)
        .filter((word) => word.length > 1 && !EMPTY.has(word) && !/^\d+$/.test(word))
        .map(stemOf),
    ),
  NOTES,
);

/** The telling words themselves, each once, in order. */
export const tellingWords = (text: string): readonly string[] => [
  ...new Set(plainWords(text).filter((word) => word.length > 1 && !EMPTY.has(word))),
];

export const shareAny = <T>(one: Iterable<T>, other: ReadonlySet<T>): boolean => {
  for (const item of one) if (other.has(item)) return true;
  return false;
};
