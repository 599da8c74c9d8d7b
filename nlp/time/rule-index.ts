import type { Variant } from "./rule.ts";

export type Ordered = Variant & { readonly order: number };

/** Rules that begin alike, by the word after that; `open` are those that may go on otherwise or end there. */
export type Begun = {
  readonly bySecond: ReadonlyMap<string, readonly Ordered[]>;
  readonly open: readonly Ordered[];
};

/** Rules by the word or the slot they begin with; those that go on from a time already read stand apart. */
export type RuleIndex = {
  readonly byWord: ReadonlyMap<string, Begun>;
  readonly bySlot: ReadonlyMap<string, Begun>;
  readonly goingOn: readonly Ordered[];
};

const put = (map: Map<string, Ordered[]>, key: string, variant: Ordered) => {
  const list = map.get(key) ?? [];
  map.set(key, list);
  list.push(variant);
};

const begunOf = (variants: readonly Ordered[]): Begun => {
  const bySecond = new Map<string, Ordered[]>();
  const open: Ordered[] = [];
  for (const variant of variants) {
    const words = variant.items[1]?.words;
    if (words === undefined) open.push(variant);
    for (const word of words ?? []) put(bySecond, word, variant);
  }
  return { bySecond, open };
};

const begun = (map: ReadonlyMap<string, readonly Ordered[]>): Map<string, Begun> =>
  new Map([...map].map(([key, variants]) => [key, begunOf(variants)]));

/** Earlier rules win over later ones of the same length. */
export const indexRules = (variants: readonly Variant[]): RuleIndex => {
  const byWord = new Map<string, Ordered[]>();
  const bySlot = new Map<string, Ordered[]>();
  const goingOn: Ordered[] = [];
  for (const [order, plain] of variants.entries()) {
    const variant = { ...plain, order };
    const first = variant.items[0];
    if (first?.slot === "when") goingOn.push(variant);
    else if (first?.slot !== undefined) put(bySlot, first.slot, variant);
    for (const word of first?.words ?? []) put(byWord, word, variant);
  }
  return { byWord: begun(byWord), bySlot: begun(bySlot), goingOn };
};
