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

/** The one word of a phrase that was heard as another of the same sound, when all others are there as they should be. */
const missed = (heard: readonly Word[], phrase: TradePhrase): number | undefined => {
  if (heard.length !== phrase.length) return undefined;
  const wrong = phrase.flatMap((word, i) => (stem(heard[i]?.text ?? "") === stem(word) ? [] : [i]));
  const [at] = wrong;
  if (wrong.length !== 1 || at === undefined) return undefined;
  return isNearMiss(heard[at]?.text ?? "", phrase[at] ?? "") ? at : undefined;
};

type Slip = { readonly word: Word; readonly meant: string };
const slipsOf = (words: readonly Word[], phrases: readonly TradePhrase[]): Slip[] => {
  const slips = new Map<number, Set<string>>();
  for (const [at] of words.entries())
    for (const phrase of phrases) {
      const wrong = missed(words.slice(at, at + phrase.length), phrase);
      const meant = wrong === undefined ? undefined : phrase[wrong];
      if (wrong === undefined || meant === undefined) continue;
      slips.set(at + wrong, (slips.get(at + wrong) ?? new Set()).add(meant));
    }
  return Array.from(slips, ([at, meant]) => ({ word: words[at], meant: [...meant] }))
    .sort((a, b) => (a.word?.start ?? 0) - (b.word?.start ?? 0))
    .flatMap(({ word, meant: [only, other] }) =>
      word && only && other === undefined ? [{ word, meant: only }] : [],
    );
};

/**
 * Puts right a word that sounds like another one in a name of the trade ("anode rot" for "anode rod") when the
 * rest of the name stands beside it and only one name fits. A word on its own is never touched.
 */
export const putRight = (hypothesis: string, phrases: readonly TradePhrase[]): PutRight => {
  const words = wordsOf(hypothesis);
  const known = new Set(phrases.map((phrase) => phrase.join(" ")));
  const isName = (at: number, length: number): boolean =>
    known.has(
      words
        .slice(at, at + length)
        .map(({ text }) => text)
        .join(" "),
    );
  const repairs: Repair[] = [];
  let text = "";
  let from = 0;
  for (const { word, meant } of slipsOf(words, phrases)) {
    const at = words.indexOf(word);
    if (isName(at, 2) || isName(at - 1, 2)) continue;
    text += hypothesis.slice(from, word.start);
    repairs.push({
      start: text.length,
      end: text.length + meant.length,
      written: meant,
      heard: hypothesis.slice(word.start, word.end),
    });
    text += meant;
    from = word.end;
  }
  return { text: text + hypothesis.slice(from), repairs };
};
