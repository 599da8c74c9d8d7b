import type { ComponentId } from "../../shared/vocabulary.ts";
import { COMPONENT_INDEX, NOT_COMPONENT_INDEX } from "./lexicon.ts";
import type { Token } from "./tokens.ts";

export type ComponentRef = {
  readonly from: number;
  readonly to: number;
  readonly id: ComponentId;
  /** A word that names this component only when nothing near it claims it ("door", "hose"). */
  readonly weak: boolean;
  readonly words: string;
  /** How often, from 0 to 1, the word names it, where no name is known and it is only guessed. */
  readonly guessed?: number;
  /** How likely, from 0 to 1, the words around speak of it, where nothing names it. */
  readonly described?: number;
};

const coveredBy = (covers: readonly { readonly from: number; readonly to: number }[]): ReadonlySet<number> =>
  new Set(covers.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, at) => from + at)));

/** The components named in a text, the longest name at each place, none overlapping. */
export const componentsIn = (tokens: readonly Token[]): ComponentRef[] => {
  const other = coveredBy(NOT_COMPONENT_INDEX.all(tokens, false));
  return COMPONENT_INDEX.all(tokens, false)
    .filter(({ from, to }) => !(other.has(from) && other.has(to - 1)))
    .map(({ from, to, value }) => ({
      from,
      to,
      id: value.id,
      weak: value.weak,
      words: value.words,
    }));
};
