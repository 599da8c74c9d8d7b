import { wordAt } from "./cardinal.ts";
import { isAmong } from "./context.ts";
import { fromOneToOther, isTooLong, type Length, together } from "./length.ts";
import { type TimeUnit, UNITS } from "./lexicon.ts";
import { numberAt, type Said } from "./numbers.ts";
import type { SlotRead } from "./pattern.ts";
import type { Token } from "./tokens.ts";

type Tokens = readonly Token[];

const TAILS: readonly (readonly string[])[] = [
  ["or", "so"],
  ["or", "thereabouts"],
  ["or", "more"],
  ["or", "less"],
  ["give", "or", "take"],
  ["and", "change"],
  ["and", "a", "bit"],
  ["and", "some"],
  ["and", "then", "some"],
  ["plus"],
  ["ish"],
  ["-", "ish"],
  ["odd"],
];

const word = (tokens: Tokens, at: number, first: boolean): string =>
  (first ? tokens[at]?.word : wordAt(tokens, at) === undefined ? undefined : tokens[at]?.word) ?? "";

const skipHedges = (tokens: Tokens, at: number): number => {
  let next = at;
  while (next - at < 5 && isAmong("hedges", word(tokens, next, next === at))) next++;
  return next;
};

const tailAt = (tokens: Tokens, at: number): number =>
  TAILS.find((tail) => tail.every((part, i) => word(tokens, at + i, false) === part))?.length ?? 0;

/** "3d ago", "6w now"; elsewhere "10w" are watts and "3m" metres. */
const GLUED = new Map<string, TimeUnit>(
  Object.entries({ d: "day", w: "week", m: "month", y: "year", h: "hour" }),
);
const GLUED_BEFORE = new Set(["ago", "back", "now", "later", "old"]);

const DECADES = new Set(["decade", "decades"]);
const YEARS_IN_DECADE = 10;

const unitAt = (tokens: Tokens, at: number, first = -1): SlotRead<TimeUnit> | undefined => {
  const start = tokens[at]?.raw === "-" && tokens[at].gap === "none" ? at + 1 : at;
  const token = tokens[start];
  const glued =
    token?.gap === "none" && GLUED_BEFORE.has(word(tokens, start + 1, false))
      ? GLUED.get(token.raw)
      : undefined;
  const said = word(tokens, start, start === first);
  const unit = glued ?? (DECADES.has(said) ? "year" : UNITS.get(said));
  return unit === undefined ? undefined : { value: unit, next: start + 1 };
};

const article = (tokens: Tokens, at: number): SlotRead<Said> | undefined => {
  const first = tokens[at]?.word;
  if (first !== "a" && first !== "an") return undefined;
  const next = skipHedges(tokens, at + 1);
  return { value: { low: 1, high: 1, kind: "cardinal", next }, next };
};

const ARTICLES = new Set(["a", "an", "one", "the", "per", "each", "every"]);

/** "week ago", "year and a half": one, with its article left out. */
const unsaid = (tokens: Tokens, at: number): SlotRead<Said> | undefined => {
  const singular = /^(?:year|month|week|fortnight|day|hour)$/u.test(tokens[at]?.word ?? "");
  const after = word(tokens, at + 1, false);
  const half =
    after === "and" &&
    /^(?:half|bit|change|some)$/u.test(word(tokens, at + 3, false) || word(tokens, at + 2, false));
  return singular &&
    !ARTICLES.has(tokens[at - 1]?.word ?? "") &&
    (half || after === "ago" || (after === "or" && word(tokens, at + 3, false) === "ago"))
    ? { value: { low: 1, high: 1, kind: "cardinal", next: at }, next: at }
    : undefined;
};

/** Numbers as a speech recogniser may hear them, before "weeks ago". */
const MISHEARD = new Map([
  ["to", 2],
  ["too", 2],
  ["for", 4],
  ["fore", 4],
  ["ate", 8],
]);
const misheard = (tokens: Tokens, at: number): SlotRead<Said> | undefined => {
  const value = MISHEARD.get(tokens[at]?.raw ?? "");
  const isAgo = UNITS.has(word(tokens, at + 1, false)) && /^(?:ago|back)$/u.test(word(tokens, at + 2, false));
  if (value === undefined || !isAgo || !word(tokens, at + 1, false).endsWith("s")) return undefined;
  return { value: { low: value, high: value, kind: "cardinal", next: at + 1 }, next: at + 1 };
};

const count = (tokens: Tokens, at: number): SlotRead<Said> | undefined => {
  const said = numberAt(tokens, at);
  const found =
    said ?? article(tokens, at)?.value ?? unsaid(tokens, at)?.value ?? misheard(tokens, at)?.value;
  if (found === undefined || found.kind === "run") return undefined;
  const next = ["of", "a", "an", "full", "whole", "solid", "more"].includes(word(tokens, found.next, false))
    ? found.next + 1
    : found.next;
  return { value: found, next };
};

/** "or two", "or ten days" behind the unit. */
const alternative = (tokens: Tokens, length: Length, more: Said): SlotRead<Length> | undefined => {
  const unit = unitAt(tokens, more.next);
  const second: Length = { ...length, low: more.low, high: more.high, unit: unit?.value ?? length.unit };
  const both = fromOneToOther(length, second);
  return both.high > both.low && both.low > 0 ? { value: both, next: unit?.next ?? more.next } : undefined;
};

/** "and a half", "or two", "and three months" behind the unit. */
const addition = (tokens: Tokens, at: number, length: Length): SlotRead<Length> | undefined => {
  const joiner = word(tokens, at, false);
  if (joiner !== "and" && joiner !== "or") return undefined;
  const more = numberAt(tokens, at + 1) ?? article(tokens, at + 1)?.value;
  if (more === undefined || more.kind === "run") return undefined;
  if (joiner === "or") return alternative(tokens, length, more);
  const unit = unitAt(tokens, more.next);
  if (more.kind === "fraction" && unit === undefined)
    return {
      value: { ...length, low: length.low + more.low, high: length.high + more.high },
      next: more.next,
    };
  const both = unit && together(length, { ...length, low: more.low, high: more.high, unit: unit.value });
  return both && { value: both, next: unit.next };
};

/** The length of time that starts at a token, or undefined. */
export const lengthAt = (tokens: Tokens, at: number): SlotRead<Length> | undefined => {
  const start = misheard(tokens, at) === undefined ? skipHedges(tokens, at) : at;
  const amount = count(tokens, start);
  if (amount === undefined) return undefined;
  const tail = tailAt(tokens, amount.next);
  const plus = tokens[amount.next + tail]?.raw === "+" ? 1 : 0;
  const unit = unitAt(tokens, amount.next + tail + plus, start);
  if (unit === undefined) return undefined;
  const by = DECADES.has(tokens[unit.next - 1]?.raw ?? "") ? YEARS_IN_DECADE : 1;
  const [low, high] = [amount.value.low * by, amount.value.high * by];
  const { kind } = amount.value;
  const hedged =
    start > at || tail + plus > 0 || kind === "vague" || (amount.next - start > 2 && kind !== "cardinal");
  const length: Length = { low, high, unit: unit.value, about: hedged };
  if (isTooLong(length)) return undefined;
  const longer = addition(tokens, unit.next, length) ?? { value: length, next: unit.next };
  const after = tailAt(tokens, longer.next);
  return { value: { ...longer.value, about: hedged || after > 0 }, next: longer.next + after };
};
