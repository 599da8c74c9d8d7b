import type { Variant } from "./rule.ts";

export type Ordered = Variant & { readonly order: number };

/** Rules by the word or the slot they begin with; those that go on from a time already read stand apart. */
export type RuleIndex = {
  readonly byWord: ReadonlyMap<string, readonly Ordered[]>;
  readonly bySlot: ReadonlyMap<string, readonly Ordered[]>;
  readonly goingOn: readonly Ordered[];
};

const put = (map: Map<string, Ordered[]>, key: string, variant: Ordered) => {
  const list = map.get(key) ?? [];
  map.set(key, list);
  list.push(variant);
};

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
  return { byWord, bySlot, goingOn };
};
