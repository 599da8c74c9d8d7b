import { type Item, joins, type SlotRead } from "./pattern.ts";
import type { Period } from "./period.ts";
import type { Reference } from "./reference.ts";
import type { Meaning } from "./rule.ts";
import type { Begun, Ordered, RuleIndex } from "./rule-index.ts";
import { mayFillSlot, SLOTS } from "./slots.ts";
import type { Token } from "./tokens.ts";

/** A phrase of time among the tokens. */
export type Found = {
  readonly at: number;
  readonly next: number;
  readonly rule: string;
  /** Of two equally long, the lower goes first. */
  readonly order: number;
  readonly meaning: Meaning;
  /** Its year is told with it. */
  readonly namesYear: boolean;
};

/** Times written as dates, found beforehand, by the index of their first token. */
export type Written = ReadonlyMap<number, Found>;

/** How many times may lie within one another: "the week before the end of last May" has three. */
const DEEPEST = 8;

const NO_RULES: RuleIndex["bySlot"] = new Map();

type Matched = { readonly slots: Readonly<Record<string, unknown>>; readonly next: number };

const isPoint = ({ meaning }: Found): boolean => (meaning.role ?? "point") === "point";
const goesBefore = (best: Found, next: number, order: number): boolean =>
  next < best.next || (next === best.next && order >= best.order);

const YEAR_SLOTS = ["year", "year2", "loose", "loose2"];

/** In tokens. */
const MONTH_AND_DAY = 2;

/** Reads phrases of time from tokens; everything is tried once at each place, so the work grows with the text. */
export class Scan {
  readonly #tokens: readonly Token[];
  readonly #reference: Reference;
  readonly #rules: RuleIndex;
  readonly #written: Written;
  readonly #slots: (Map<string, SlotRead<unknown> | undefined> | undefined)[] = [];
  readonly #best: (Found | null | undefined)[] = [];
  #before: Period | undefined;
  #depth = 0;

  constructor(tokens: readonly Token[], reference: Reference, rules: RuleIndex, written: Written) {
    this.#tokens = tokens;
    this.#reference = reference;
    this.#rules = rules;
    this.#written = written;
    this.#before = reference.anchor;
  }

  /** All phrases from left to right, the longest at each place, none overlapping. */
  all(): readonly Found[] {
    const found: Found[] = [];
    for (let at = 0; at < this.#tokens.length; ) {
      const best = this.#bestAt(at);
      if (best !== undefined) {
        found.push(best);
        if (isPoint(best) || best.meaning.role === "after-that") this.#goOnFrom(best);
      }
      at = best?.next ?? at + 1;
    }
    return found;
  }

  /** What was looked at ahead did not know of this time. */
  #goOnFrom({ meaning, next }: Found): void {
    this.#before = meaning.period;
    this.#best.length = Math.min(this.#best.length, next);
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
    const start: Matched = { slots: {}, next: at };
    const word = this.#tokens[at]?.word ?? "";
    best = this.#longestOf(this.#rules.byWord.get(word), best, at, at + 1, start);
    for (const [slot, begun] of mayFillSlot(this.#tokens[at]) ? this.#rules.bySlot : NO_RULES) {
      const read = this.#slotAt(slot, at);
      if (read !== undefined) best = this.#longestOf(begun, best, at, read.next, start);
    }
    if (best !== undefined && word === "in" && this.#isDateAt(at + 1, best.next)) return undefined;
    return best && isPoint(best) ? this.#goneOn(best) : best;
  }

  /** "It went in June 8 2023", and not "in June 8 bucks": a written date that goes on further than the month alone. */
  #isDateAt(at: number, after: number): boolean {
    const next = this.#written.get(at)?.next ?? 0;
    return next > after && (next - at > MONTH_AND_DAY || next >= this.#tokens.length);
  }

  #longestOf(begun: Begun | undefined, sofar: Found | undefined, at: number, second: number, start: Matched) {
    let best = sofar;
    for (const variant of begun?.bySecond.get(this.#tokens[second]?.word ?? "") ?? [])
      best = this.#longer(best, variant, at, start);
    for (const variant of begun?.open ?? []) best = this.#longer(best, variant, at, start);
    return best;
  }

  /** "June" may go on as "June or July". */
  #goneOn(first: Found): Found {
    const named = first.namesYear ? { year: first.meaning.period.from.year } : {};
    const start: Matched = { slots: { when: first.meaning.period, ...named }, next: first.next };
    let best = first;
    for (const variant of this.#rules.goingOn) best = this.#longer(best, variant, first.at, start) ?? best;
    return best;
  }

  #longer(best: Found | undefined, variant: Ordered, at: number, start: Matched): Found | undefined {
    const matched = this.#match(variant.items, at, start);
    if (matched === undefined || (best !== undefined && goesBefore(best, matched.next, variant.order)))
      return best;
    const place = { tokens: this.#tokens, at, next: matched.next, before: this.#before };
    const meaning = variant.build(matched.slots, this.#reference, place);
    if (meaning === undefined) return best;
    const namesYear = YEAR_SLOTS.some((slot) => slot in matched.slots);
    return { at, next: matched.next, rule: variant.rule, order: variant.order, meaning, namesYear };
  }

  #match(items: readonly Item[], at: number, start: Matched): Matched | undefined {
    let slots: Record<string, unknown> | undefined;
    let next = start.next;
    for (let place = next > at ? 1 : 0; place < items.length; place++) {
      const item = items[place] as Item;
      const token = this.#tokens[next];
      if (token === undefined || !joins(item, token, next === at)) return undefined;
      if (item.slot === undefined || item.kind === undefined) {
        if (item.words?.has(token.word) !== true) return undefined;
        next += 1;
        continue;
      }
      const read = this.#slotAt(item.kind, next);
      if (read === undefined) return undefined;
      slots ??= { ...start.slots };
      slots[item.slot] = read.value;
      next = read.next;
    }
    return { slots: slots ?? start.slots, next };
  }

  #slotAt(kind: string, at: number): SlotRead<unknown> | undefined {
    if (kind === "when") return this.#whenAt(at);
    if (!mayFillSlot(this.#tokens[at])) return undefined;
    const cache = this.#slots[at] ?? new Map<string, SlotRead<unknown> | undefined>();
    this.#slots[at] = cache;
    if (cache.has(kind)) return cache.get(kind);
    const read = this.#plainSlotAt(kind, at);
    cache.set(kind, read);
    return read;
  }

  #plainSlotAt(slot: string, at: number): SlotRead<unknown> | undefined {
    const reader = SLOTS[slot as keyof typeof SLOTS];
    return reader(this.#tokens, at, this.#reference);
  }

  #whenAt(at: number): SlotRead<Period> | undefined {
    if (this.#depth >= DEEPEST) return undefined;
    this.#depth += 1;
    const best = this.#bestAt(at);
    this.#depth -= 1;
    const role = best?.meaning.role ?? "point";
    return best === undefined || role !== "point"
      ? undefined
      : { value: best.meaning.period, next: best.next };
  }
}
