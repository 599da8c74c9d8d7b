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
