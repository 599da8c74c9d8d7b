import { stemOf } from "../../shared/memory/words.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import type { Token } from "../lexicon/tokens.ts";
import type { Telling } from "./tellings.ts";

/** How likely the words around a place speak of each thing, from 0 to 1, whether or not they name it. */
export type Described = ReadonlyMap<ComponentId, number>;

/** As far back and ahead of a place, in words, as they are looked at: right there, around it, and in a note that is no longer. */
const NEAR = [6, 6] as const;
const AROUND = [18, 12] as const;
const FAR = [60, 40] as const;
const LONG = 140;

type Reach = readonly [back: number, ahead: number];

/** The words around a place, as signs of what is spoken of there; those that are `hidden` are left out. */
export const describingSigns = (
  tokens: readonly Token[],
  at: number,
  hidden: (at: number) => boolean = () => false,
): string[] => {
  const stemsIn = ([back, ahead]: Reach): (string | undefined)[] => {
    const from = Math.max(0, at - back);
    return tokens
      .slice(from, at + ahead)
      .map(({ kind, norm }, nth) => (kind === "mark" || hidden(from + nth) ? undefined : stemOf(norm)));
  };
  const single = (name: string, reach: Reach): string[] =>
    stemsIn(reach).flatMap((stem) => (stem === undefined ? [] : [`${name} ${stem}`]));
  const pairs = (name: string, reach: Reach): string[] => {
    const stems = stemsIn(reach);
    return stems.slice(1).flatMap((stem, nth) => {
      const before = stems[nth];
      return stem === undefined || before === undefined ? [] : [`${name} ${before} ${stem}`];
    });
  };
  return [
    ...single("near", NEAR),
    ...pairs("near", NEAR),
    ...single("around", AROUND),
    ...pairs("around", AROUND),
    ...(tokens.length < LONG ? single("far", FAR) : []),
  ];
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
