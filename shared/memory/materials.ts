import { plainWords, shareAny, stemOf } from "./words.ts";

const stems = (materials: readonly string[]): ReadonlySet<string> =>
  new Set(materials.flatMap(plainWords).map(stemOf));

/** Unknown when one account names none; same when they share a word ("sealant", "polyurethane sealant"). */
export const compareMaterials = (one: readonly string[], other: readonly string[]) => {
  if (one.length === 0 || other.length === 0) return "unknown";
  return shareAny(stems(one), stems(other)) ? "same" : "different";
};
