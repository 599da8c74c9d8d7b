import { stemOf } from "../../shared/memory/words.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import type { Token } from "../lexicon/tokens.ts";
import { decided, type Layers } from "./layered.ts";
import { addStretch, runningSums, type SignBytes } from "./sign-bytes.ts";
import type { Telling } from "./tellings.ts";

/** How likely the words around a place speak of each thing, from 0 to 1, whether or not they name it. */
export type Described = ReadonlyMap<ComponentId, number>;

/** Words around a place, as far back and ahead of it as that. */
type Window = {
  readonly name: string;
  readonly back: number;
  readonly ahead: number;
  /** Whether each two words that stand together count as well. */
  readonly paired: boolean;
};

/** Right there, around it, and in a note that is no longer. */
const WINDOWS: readonly Window[] = [
  { name: "near", back: 6, ahead: 6, paired: true },
  { name: "around", back: 18, ahead: 12, paired: true },
];
const WHOLE: Window = { name: "far", back: 60, ahead: 40, paired: false };
const LONG = 140;

const windowsIn = (tokens: readonly Token[]): readonly Window[] =>
  tokens.length < LONG ? [...WINDOWS, WHOLE] : WINDOWS;

type Stems = readonly (string | undefined)[];

const stemsOf = (tokens: readonly Token[], hidden: (at: number) => boolean): Stems =>
  tokens.map(({ kind, norm }, at) => (kind === "mark" || hidden(at) ? undefined : stemOf(norm)));

const singleSign = (name: string, stem: string | undefined): string | undefined =>
  stem === undefined ? undefined : `${name} ${stem}`;

/** A word with the one before it. */
const pairSign = (name: string, stems: Stems, at: number): string | undefined => {
  const [before, stem] = [stems[at - 1], stems[at]];
  return before === undefined || stem === undefined ? undefined : `${name} ${before} ${stem}`;
};

const reachOf = ({ back, ahead }: Window, at: number, words: number) => ({
  from: Math.max(0, at - back),
  to: Math.min(words, at + ahead),
});

const isSign = (sign: string | undefined): sign is string => sign !== undefined;

/** The words around a place, as signs of what is spoken of there; those that are `hidden` are left out. */
export const describingSigns = (
  tokens: readonly Token[],
  at: number,
  hidden: (at: number) => boolean = () => false,
): string[] => {
  const stems = stemsOf(tokens, hidden);
  return windowsIn(tokens).flatMap((window) => {
    const { from, to } = reachOf(window, at, stems.length);
    const places = Array.from({ length: Math.max(0, to - from) }, (_, nth) => from + nth);
    const single = places.map((place) => singleSign(window.name, stems[place]));
    const pairs = window.paired ? places.slice(1).map((place) => pairSign(window.name, stems, place)) : [];
    return [...single, ...pairs].filter(isSign);
  });
};

type Summed = {
  readonly window: Window;
  readonly single: Int32Array;
  readonly pairs: Int32Array | undefined;
};

const summedOver = (inner: SignBytes, tokens: readonly Token[]): readonly Summed[] => {
  const stems = stemsOf(tokens, () => false);
  return windowsIn(tokens).map((window) => ({
    window,
    single: runningSums(
      inner,
      stems.map((stem) => singleSign(window.name, stem)),
    ),
    pairs: window.paired
      ? runningSums(
          inner,
          stems.map((_, at) => pairSign(window.name, stems, at)),
        )
      : undefined,
  }));
};

/**
 * What the words around any place of a text speak of, by a layered judge over `describingSigns`. The windows around places
 * overlap, so the text is added up once.
 */
export const describer = (layers: Layers): ((tokens: readonly Token[], at: number) => number[]) => {
  let last: { readonly tokens: readonly Token[]; readonly sums: readonly Summed[] } | undefined;
  const summed = (tokens: readonly Token[]): readonly Summed[] => {
    if (last?.tokens !== tokens) last = { tokens, sums: summedOver(layers.inner, tokens) };
    return last.sums;
  };
  return (tokens, at) => {
    const steps = new Int32Array(layers.inner.width);
    for (const { window, single, pairs } of summed(tokens)) {
      const { from, to } = reachOf(window, at, tokens.length);
      if (to <= from) continue;
      addStretch(steps, single, from, to);
      if (pairs !== undefined) addStretch(steps, pairs, from + 1, to);
    }
    return decided(layers, steps);
  };
};

/** From here on, a thing that is not named is among those that may be meant; and as many as that. */
const LEAST = 0.12;
const MOST = 2;

/** The mentions that a place may be about, and beside them what its words speak of without a name. */
export const withDescribed = (
  aims: readonly ComponentRef[],
  described: Described,
  { at }: Telling,
): ComponentRef[] => {
  const named = new Set(aims.map(({ id }) => id));
  const more = [...described]
    .filter(([id, sure]) => sure >= LEAST && !named.has(id))
    .toSorted((a, b) => b[1] - a[1])
    .slice(0, MOST)
    .map(([id, described]): ComponentRef => ({ from: at, to: at, id, weak: true, words: "", described }));
  return [...aims, ...more];
};
