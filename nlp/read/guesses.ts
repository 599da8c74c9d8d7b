import { COMPONENTS, type ComponentId } from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import { singular } from "../lexicon/tokens.ts";
import table from "./guesses.json" with { type: "json" };
import type { Scan } from "./scan.ts";

type Guess = { readonly id: ComponentId; readonly share: number };

const isComponent = (id: string): id is ComponentId => (COMPONENTS as readonly string[]).includes(id);

const GUESSES: ReadonlyMap<string, readonly Guess[]> = new Map(
  Object.entries(table.words as Record<string, Record<string, number>>).map(([word, shares]) => [
    word,
    Object.entries(shares).flatMap(([id, share]) => (isComponent(id) ? [{ id, share }] : [])),
  ]),
);

/** The word as it stands in the table of guesses. */
export const guessWord = (norm: string): string => singular(norm);

const guessed = (word: string, from: number, to: number): ComponentRef[] =>
  (GUESSES.get(word) ?? []).map(({ id, share }) => ({
    from,
    to,
    id,
    weak: true,
    words: word,
    guessed: share,
  }));

/**
 * The mentions, and beside them what their names and words that name nothing by themselves have stood for in notes:
 * "the wheels" for their bearings, "the trap" for the sink.
 */
export const withGuesses = (scan: Scan, mentions: readonly ComponentRef[]): ComponentRef[] => {
  const covered = new Set<number>();
  for (const { from, to } of mentions) for (let at = from; at < to; at++) covered.add(at);
  const others = mentions.flatMap(({ id, words, from, to }) =>
    guessed(`=${words}`, from, to).filter((each) => each.id !== id),
  );
  const bare = scan.tokens.flatMap(({ norm }, at) =>
    covered.has(at) ? [] : guessed(guessWord(norm), at, at + 1),
  );
  return [...mentions, ...others, ...bare].sort((a, b) => a.from - b.from);
};
