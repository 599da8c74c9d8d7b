import { doubleMetaphone } from "double-metaphone";
import type { Repair } from "./heard.ts";

/** A name of the trade of two or more words, lower case. */
export type TradePhrase = readonly string[];
export type PutRight = { readonly text: string; readonly repairs: readonly Repair[] };

type Word = { readonly text: string; readonly start: number; readonly end: number };
const wordsOf = (text: string): Word[] =>
  Array.from(text.matchAll(/[\p{L}']+/gu), (match) => ({
    text: match[0].toLowerCase(),
    start: match.index,
    end: match.index + match[0].length,
  }));

const soundsLike = (one: string, other: string): boolean =>
  doubleMetaphone(one)[0] === doubleMetaphone(other)[0];

const MOST_DIFFERENT = 0.5;
const MIN_LENGTH = 4;

/** Letters to change, over the longer word's length (Levenshtein 1966). */
const difference = (one: string, other: string): number => {
  let row = Array.from({ length: other.length + 1 }, (_, j) => j);
  for (const [i, letter] of Array.from(one).entries()) {
    const next = [i + 1];
    for (const [j, target] of Array.from(other).entries())
      next.push(
        Math.min((row[j + 1] ?? 0) + 1, (next[j] ?? 0) + 1, (row[j] ?? 0) + (letter === target ? 0 : 1)),
      );
    row = next;
  }
  return (row.at(-1) ?? 0) / Math.max(one.length, other.length);
};

const isNearMiss = (heard: string, meant: string): boolean =>
  Math.min(heard.length, meant.length) >= MIN_LENGTH &&
  soundsLike(heard, meant) &&
  difference(heard, meant) <= MOST_DIFFERENT;

/** "s" and "'s" may follow; neither makes it another word. */
const stem = (word: string): string => word.replace(/'?s$/, "");

type Phrases = {
  readonly tradeWords: ReadonlySet<string>;
  /** Phrases by each of their words. */
  readonly having: ReadonlyMap<string, readonly TradePhrase[]>;
};
const indexed = (phrases: readonly TradePhrase[]): Phrases => {
  const having = new Map<string, TradePhrase[]>();
  for (const phrase of phrases)
    for (const word of new Set(phrase.map(stem))) having.set(word, [...(having.get(word) ?? []), phrase]);
  return { tradeWords: new Set(having.keys()), having };
};

const REACH = [-2, -1, 1, 2];

/** Whether a phrase stands around the word at `at`, right in every word but that one. */
const standsAround = (words: readonly Word[], at: number, phrase: TradePhrase, place: number): boolean =>
  phrase.every((word, i) => i === place || stem(words[at - place + i]?.text ?? "") === stem(word));

/** What a word must have been, when it is no word of the trade itself and all names around it agree. */
const meantBy = (words: readonly Word[], at: number, { tradeWords, having }: Phrases): string | undefined => {
  const heard = words[at]?.text ?? "";
  if (heard.length < MIN_LENGTH || tradeWords.has(stem(heard))) return undefined;
  const around = REACH.flatMap((reach) => having.get(stem(words[at + reach]?.text ?? "")) ?? []);
  const meant = new Set(
    around.flatMap((phrase) =>
      phrase.filter((word, place) => standsAround(words, at, phrase, place) && isNearMiss(heard, word)),
    ),
  );
  const [only, other] = meant;
  return other === undefined ? only : undefined;
};

const NAME_LENGTH = 6;
const NAME_DIFFERENT = 0.4;

/** The one given name that sounds the same and is spelt nearly so. */
const nameMeantBy = ({ text }: Word, names: readonly string[]): string | undefined => {
  if (text.length < NAME_LENGTH - 1 || names.some((name) => stem(name.toLowerCase()) === stem(text)))
    return undefined;
  const [only, other] = names.filter(
    (name) =>
      name.length >= NAME_LENGTH &&
      soundsLike(name, text) &&
      difference(name.toLowerCase(), text) <= NAME_DIFFERENT,
  );
  return other === undefined ? only : undefined;
};

const rewritten = (hypothesis: string, slips: readonly { word: Word; meant: string }[]): PutRight => {
  const repairs: Repair[] = [];
  let text = "";
  let from = 0;
  for (const { word, meant } of slips) {
    text += hypothesis.slice(from, word.start);
    const heard = hypothesis.slice(word.start, word.end);
    repairs.push({ start: text.length, end: text.length + meant.length, written: meant, heard });
    text += meant;
    from = word.end;
  }
  return { text: text + hypothesis.slice(from), repairs };
};

/**
 * Puts right a word that sounds like another one in a name of the trade ("wheel baring" for "wheel bearing") when
 * the rest of the name stands beside it and only one name fits. A word on its own is never touched, nor one that
 * the trade has itself; but a word of the same sound as one of the names given, of six letters or more, becomes that.
 */
export const nearMissRepair = (
  phrases: readonly TradePhrase[],
): ((hypothesis: string, names?: readonly string[]) => PutRight) => {
  const index = indexed(phrases);
  return (hypothesis, names = []) => {
    const words = wordsOf(hypothesis);
    const slips = words.flatMap((word, at) => {
      const meant =
        meantBy(words, at, index) ??
        (index.tradeWords.has(stem(word.text)) ? undefined : nameMeantBy(word, names));
      return meant === undefined ? [] : [{ word, meant }];
    });
    return rewritten(hypothesis, slips);
  };
};
