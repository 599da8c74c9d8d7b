import type { Span } from "../../shared/reading.ts";
import type { Action, ComponentId } from "../../shared/vocabulary.ts";
import { componentsIn } from "./components.ts";
import { ACTION_INDEX, type MaterialClass, PLACE_INDEX, type Sense, SPELLER } from "./lexicon.ts";
import { materialsIn } from "./materials.ts";
import { tokenize } from "./spelling.ts";
import type { Token } from "./tokens.ts";

export type { MaterialClass, Sense } from "./lexicon.ts";

const spanOf = (tokens: readonly Token[], from: number, to: number): Span => ({
  start: tokens[from]?.start ?? 0,
  end: tokens[to - 1]?.end ?? 0,
});

/** A component named in a text. `weak` words ("door", "hose") may be a part of something else nearby. */
export type ComponentMention = {
  readonly component: ComponentId;
  readonly span: Span;
  readonly weak: boolean;
};
/** Every component named, longest names first at each place, spelling slips repaired. */
export const findComponents = (text: string): ComponentMention[] => {
  const tokens = tokenize(text, SPELLER);
  return componentsIn(tokens).map(({ from, to, id, weak }) => ({
    component: id,
    weak,
    span: spanOf(tokens, from, to),
  }));
};

/** A word or phrase for work; `action` is null where the material decides ("put some ... on"). */
export type ActionMention = { readonly action: Action | null; readonly sense: Sense; readonly span: Span };
/** Every action named, whatever the tense, whether or not it was done. */
export const findActions = (text: string): ActionMention[] => {
  const tokens = tokenize(text, SPELLER);
  return ACTION_INDEX.all(tokens, false).map(({ from, to, value }) => ({
    ...value,
    span: spanOf(tokens, from, to),
  }));
};

export type PlaceMention = {
  readonly words: string;
  readonly kind: "side" | "end" | "room";
  readonly span: Span;
};
/** Every word for a place on the rig: "driver side", "rear", "bathroom". */
export const findPlaces = (text: string): PlaceMention[] => {
  const tokens = tokenize(text, SPELLER);
  return PLACE_INDEX.all(tokens, false).map(({ from, to, value }) => {
    const span = spanOf(tokens, from, to);
    return { words: text.slice(span.start, span.end).toLowerCase(), kind: value, span };
  });
};

export type MaterialMention = {
  readonly name: string;
  readonly group: MaterialClass | null;
  readonly brands: readonly string[];
  readonly span: Span;
};
/** Every material named by a known kind word, without brand, size or colour, used or not. */
export const findMaterials = (text: string): MaterialMention[] => {
  const tokens = tokenize(text, SPELLER);
  return materialsIn(tokens, (word) => SPELLER.knows(word)).map(({ from, to, name, group, brands }) => ({
    name,
    group,
    brands,
    span: spanOf(tokens, from, to),
  }));
};
