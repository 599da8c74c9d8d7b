import { plainWords, shareAny, stemOf } from "./words.ts";

const stems = (materials: readonly string[]): ReadonlySet<string> =>
  new Set(materials.flatMap(plainWords).map(stemOf));

/** Unknown when one account names none; same when they share a word ("sealant", "polyurethane sealant"). */
export const compareMaterials = (one: readonly string[], other: readonly string[]) => {
  if (one.length === 0 || other.length === 0) return "unknown";
  return shareAny(stems(one), stems(other)) ? "same" : "different";
};

const kindsOf = (material: string): readonly string[] => plainWords(material).slice(0, -1).map(stemOf);

/** "Lap sealant" is not polyurethane sealant, though either may be called sealant. */
export const isSuchStuff = (asked: string, kept: string): boolean => {
  if (compareMaterials([asked], [kept]) !== "same") return false;
  const [one, other] = [kindsOf(asked), kindsOf(kept)];
  const head = compareMaterials([plainWords(asked).at(-1) ?? ""], [kept]) === "same";
  return !head || one.length === 0 || other.length === 0 || one.some((kind) => other.includes(kind));
};
