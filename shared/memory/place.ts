import table from "./place.json" with { type: "json" };
import { plainWords } from "./words.ts";

/** A dimension of place ("along") and its value ("front"). */
type Sense = { readonly dimension: string; readonly value: string };

const SENSES: ReadonlyMap<string, Sense> = new Map(
  Object.entries(table.dimensions).flatMap(([dimension, values]) =>
    Object.entries(values).flatMap(([value, phrases]: [string, string[]]) =>
      phrases.map((phrase): [string, Sense] => [plainWords(phrase).join(" "), { dimension, value }]),
    ),
  ),
);

export type Place = ReadonlyMap<string, ReadonlySet<string>>;

/** The values that a spoken place takes, by dimension: "left rear" is rear along and left at hand. */
export const placeOf = (text: string): Place => {
  const words = plainWords(text);
  const place = new Map<string, Set<string>>();
  for (let at = 0; at < words.length; at++) {
    const two = SENSES.get(words.slice(at, at + 2).join(" "));
    const sense = two ?? SENSES.get(words[at] ?? "");
    if (sense === undefined) continue;
    place.set(sense.dimension, (place.get(sense.dimension) ?? new Set()).add(sense.value));
    if (two !== undefined) at++;
  }
  return place;
};

const sensesOf = (word: string): Sense | undefined => SENSES.get(plainWords(word).join(" "));

/**
 * "The rear", said of the right front, is the right rear: a word for one dimension of a place that has more takes the
 * place of that one. Anything else stands as told.
 */
export const placeCorrected = (kept: string | null, told: string): string => {
  const sense = sensesOf(told.replace(/^(?:on |at |in )?(?:the )?/i, ""));
  if (kept === null || sense === undefined) return told;
  const others = [...placeOf(kept).keys()].filter((dimension) => dimension !== sense.dimension);
  if (!others.some((dimension) => SIDES.has(dimension))) return told;
  const bare = told.replace(/^(?:on |at |in )?(?:the )?/i, "");
  const words = kept.split(/\s+/);
  const isOfIt = (word: string): boolean => sensesOf(word)?.dimension === sense.dimension;
  if (words.some(isOfIt)) return words.map((word) => (isOfIt(word) ? bare : word)).join(" ");
  return others.length === 1 && words.length === 1 && SIDES.has(sense.dimension) ? `${bare} ${kept}` : told;
};

/** Dimensions that combine: left or right, front or rear, top or bottom. */
const SIDES: ReadonlySet<string> = new Set(["along", "side", "hand", "height"]);

export type Likeness = "same" | "different" | "unknown";

const overlap = (one: ReadonlySet<string>, other: ReadonlySet<string>): boolean =>
  [...one].some((value) => other.has(value));

/** Different when they contradict each other in one dimension, unknown when they never meet. */
export const comparePlaces = (one: string | null, other: string | null): Likeness => {
  if (one === null || other === null) return "unknown";
  if (plainWords(one).join(" ") === plainWords(other).join(" ")) return "same";
  const a = placeOf(one);
  const b = placeOf(other);
  const shared = [...a.keys()].filter((dimension) => b.has(dimension));
  if (shared.length === 0) return "unknown";
  const agree = shared.every((dimension) =>
    overlap(a.get(dimension) ?? new Set(), b.get(dimension) ?? new Set()),
  );
  return agree ? "same" : "different";
};
