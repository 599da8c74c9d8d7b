import table from "./stuff.json" with { type: "json" };
import { plainWords, shareAny, stemOf } from "./words.ts";

const stems = (materials: readonly string[]): ReadonlySet<string> =>
  new Set(materials.flatMap(plainWords).map(stemOf));

/** For each loose name of a sort of stuff ("glue"), the stems of all that is called so. */
const LOOSE: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  table.sorts.flatMap(({ loose, of }) =>
    loose.map((name) => [stemOf(name), new Set([...loose, ...of].map(stemOf))] as const),
  ),
);

/** Called by nothing but a loose name in one account, and something of that sort in the other. */
const looselySame = (one: readonly string[], other: readonly string[]): boolean =>
  one.some((material) => {
    const sorts = [...stems([material])].map((stem) => LOOSE.get(stem));
    return sorts.every((sort) => sort !== undefined && shareAny(sort, stems(other)));
  });

/** Unknown when one account names none; same when they share a word ("sealant", "polyurethane sealant"). */
export const compareMaterials = (one: readonly string[], other: readonly string[]) => {
  if (one.length === 0 || other.length === 0) return "unknown";
  return shareAny(stems(one), stems(other)) ? "same" : "different";
};

/** As `compareMaterials`, where one account may only give a loose name ("the glue", "contact cement"). */
export const compareLoosely = (one: readonly string[], other: readonly string[]) =>
  looselySame(one, other) || looselySame(other, one) ? "same" : compareMaterials(one, other);

/** "Zinc bolt" and "stainless bolts": two kinds of one thing. */
export const isSameHead = (one: string, other: string): boolean =>
  stemOf(plainWords(one).at(-1) ?? "") === stemOf(plainWords(other).at(-1) ?? "");

const kindsOf = (material: string): readonly string[] => plainWords(material).slice(0, -1).map(stemOf);

/** "Lap sealant" is not polyurethane sealant, though either may be called sealant. */
export const isSuchStuff = (asked: string, kept: string): boolean => {
  if (compareMaterials([asked], [kept]) !== "same") return false;
  const [one, other] = [kindsOf(asked), kindsOf(kept)];
  const head = compareMaterials([plainWords(asked).at(-1) ?? ""], [kept]) === "same";
  return !head || one.length === 0 || other.length === 0 || one.some((kind) => other.includes(kind));
};
