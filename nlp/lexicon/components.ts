import type { ComponentId } from "../../shared/vocabulary.ts";
import { COMPONENT_INDEX } from "./lexicon.ts";
import type { Token } from "./tokens.ts";

export type ComponentRef = {
  readonly from: number;
  readonly to: number;
  readonly id: ComponentId;
  /** A word that names this component only when nothing near it claims it ("door", "hose"). */
  readonly weak: boolean;
  readonly words: string;
};

/** The components named in a text, the longest name at each place, none overlapping. */
export const componentsIn = (tokens: readonly Token[]): ComponentRef[] =>
  COMPONENT_INDEX.all(tokens, false).map(({ from, to, value }) => ({
    from,
    to,
    id: value.id,
    weak: value.weak,
    words: value.words,
  }));
