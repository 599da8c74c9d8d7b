import { type Item, joins, type SlotRead } from "./pattern.ts";
import type { Period } from "./period.ts";
import type { Reference } from "./reference.ts";
import type { Meaning, Variant } from "./rule.ts";
import { SLOTS } from "./slots.ts";
import type { Token } from "./tokens.ts";

/** A phrase of time among the tokens. */
export type Found = {
  readonly at: number;
  readonly next: number;
  readonly rule: string;
  readonly meaning: Meaning;
};

/** Times written as dates, found beforehand, by the index of their first token. */
export type Written = ReadonlyMap<number, Found>;

/** Rules by the word they begin with; those that begin with a slot stand apart. */
export type RuleIndex = {
  readonly byWord: ReadonlyMap<string, readonly Ordered[]>;
  readonly bySlot: ReadonlyMap<string, readonly Ordered[]>;
};
type Ordered = Variant & { readonly order: number };

export const indexRules = (variants: readonly Variant[]): RuleIndex => {
  const byWord = new Map<string, Ordered[]>();
  const bySlot = new Map<string, Ordered[]>();
  const put = (map: Map<string, Ordered[]>, key: string, variant: Ordered) => {
    const list = map.get(key) ?? [];
    map.set(key, list);
    list.push(variant);
  };
  for (const [order, plain] of variants.entries()) {
    const variant = { ...plain, order };
    const first = variant.items[0];
    if (first?.slot !== undefined) put(bySlot, first.slot, variant);
    for (const word of first?.words ?? []) put(byWord, word, variant);
  }
  return { byWord, bySlot };
};

/** Reads phrases of time from tokens; everything is tried once at each place, so the work grows with the text. */
export class Scan {
  readonly #tokens: readonly Token[];
  readonly #reference: Reference;
  readonly #rules: RuleIndex;
  readonly #written: Written;
  readonly #slots: Map<string, SlotRead<unknown> | undefined>[];
  readonly #best: (Found | null | undefined)[] = [];
  #before: Period | undefined;

  constructor(tokens: readonly Token[], reference: Reference, rules: RuleIndex, written: Written) {
    this.#tokens = tokens;
    this.#reference = reference;
    this.#rules = rules;
    this.#written = written;
    this.#slots = tokens.map(() => new Map<string, SlotRead<unknown> | undefined>());
    this.#before = reference.anchor;
  }

  /** All phrases from left to right, the longest at each place, none overlapping. */
  all(): readonly Found[] {
    const found: Found[] = [];
    for (let at = 0; at < this.#tokens.length; ) {
      const best = this.#bestAt(at);
      if (best !== undefined) {
        found.push(best);
        if (
          best.meaning.role === undefined ||
          best.meaning.role === "point" ||
          best.meaning.role === "after-that"
        )
          this.#before = best.meaning.period;
      }
      at = best?.next ?? at + 1;
    }
    return found;
  }

  #bestAt(at: number): Found | undefined {
    const known = this.#best[at];
    if (known !== undefined) return known ?? undefined;
    this.#best[at] = null;
    const best = this.#longest(at);
    this.#best[at] = best ?? null;
    return best;
  }

  #longest(at: number): Found | undefined {
    let best = this.#written.get(at);
    const word = this.#tokens[at]?.word ?? "";
    for (const variant of this.#rules.byWord.get(word) ?? []) best = this.#longer(best, variant, at);
    for (const [slot, variants] of this.#rules.bySlot)
      if (this.#slotAt(slot, at) !== undefined)
        for (const variant of variants) best = this.#longer(best, variant, at);
    return best;
  }

  #longer(best: Found | undefined, variant: Ordered, at: number): Found | undefined {
    const matched = this.#match(variant.items, at);
    if (matched === undefined) return best;
    if (
      best !== undefined &&
      (matched.next < best.next || (matched.next === best.next && variant.order > best.order))
    )
      return best;
    const place = { tokens: this.#tokens, at, next: matched.next, before: this.#before };
    const meaning = variant.build(matched.slots, this.#reference, place);
    return meaning === undefined
      ? best
      : { at, next: matched.next, rule: variant.rule, order: variant.order, meaning };
  }

  #match(items: readonly Item[], at: number): { slots: Record<string, unknown>; next: number } | undefined {
    const slots: Record<string, unknown> = {};
    let next = at;
    for (const item of items) {
      const token = this.#tokens[next];
      if (token === undefined || !joins(item, token, next === at)) return undefined;
      if (item.slot === undefined) {
        if (item.words?.has(token.word) !== true) return undefined;
        next += 1;
        continue;
      }
      const read = this.#slotAt(item.slot, next);
      if (read === undefined) return undefined;
      slots[item.slot] = read.value;
      next = read.next;
    }
    return { slots, next };
  }

  #slotAt(slot: string, at: number): SlotRead<unknown> | undefined {
    const cache = this.#slots[at];
    if (cache?.has(slot) === true) return cache.get(slot);
    const kind = slot.replace(/2$/u, "");
    const read = kind === "when" ? this.#whenAt(at) : this.#plainSlotAt(kind, at);
    cache?.set(slot, read);
    return read;
  }

  #plainSlotAt(slot: string, at: number): SlotRead<unknown> | undefined {
    const reader = SLOTS[slot as keyof typeof SLOTS];
    return reader(this.#tokens, at, this.#reference);
  }

  #whenAt(at: number): SlotRead<Period> | undefined {
    const best = this.#bestAt(at);
    const role = best?.meaning.role ?? "point";
    return best === undefined || role !== "point"
      ? undefined
      : { value: best.meaning.period, next: best.next };
  }
}
