import { plainWords, stemOf } from "../../shared/memory/words.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { wordSigns } from "../judges/word-signs.ts";
import type { Described } from "../read/described.ts";

/** As many words as are looked at. */
const MOST_WORDS = 60;

/** The signs, as names, that tell which thing words speak of: "the cooler up top", "the little door the cylinders sit behind". */
export const speakingSigns = (text: string): string[] => {
  const words = plainWords(text).slice(0, MOST_WORDS);
  const stems = words.map(stemOf);
  const behind = (stem: string, far: number): string => `${stems[far] ?? ""} ${stem}`;
  return [
    ...new Set([
      ...wordSigns(words),
      ...stems.slice(1).map((stem, at) => `pair=${behind(stem, at)}`),
      ...stems.slice(2).map((stem, at) => `apart=${behind(stem, at)}`),
    ]),
  ];
};

/** From here on, a thing is among those that words may speak of; and as many as that. */
const LEAST = 0.08;
const MOST = 3;

/** The things that words likely speak of, the likeliest first. */
export const likelySpokenOf = (spoken: Described): readonly ComponentId[] =>
  [...spoken]
    .filter(([, sure]) => sure >= LEAST)
    .toSorted((a, b) => b[1] - a[1])
    .slice(0, MOST)
    .map(([component]) => component);
