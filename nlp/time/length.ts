import { Temporal } from "temporal-polyfill";
import type { Exposure, UseUnit } from "../../shared/record.ts";
import { wordAt } from "./cardinal.ts";
import { isAmong } from "./context.ts";
import { type TimeUnit, UNITS } from "./lexicon.ts";
import { numberAt, type Said } from "./numbers.ts";
import type { SlotRead } from "./pattern.ts";
import type { Token } from "./tokens.ts";

/** How long: "about six weeks", "a year and a half", "three or four months". */
export type Length = {
  readonly low: number;
  readonly high: number;
  readonly unit: TimeUnit;
  readonly about: boolean;
};
type Tokens = readonly Token[];

const TAILS: readonly (readonly string[])[] = [
  ["or", "so"],
  ["or", "thereabouts"],
  ["or", "more"],
  ["or", "less"],
  ["give", "or", "take"],
  ["ish"],
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

const unitAt = (tokens: Tokens, at: number, first = -1): SlotRead<TimeUnit> | undefined => {
  const start = tokens[at]?.raw === "-" && tokens[at].gap === "none" ? at + 1 : at;
  const token = tokens[start];
  const glued =
    token?.gap === "none" && GLUED_BEFORE.has(word(tokens, start + 1, false))
      ? GLUED.get(token.raw)
      : undefined;
  const unit = glued ?? UNITS.get(word(tokens, start, start === first));
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
  const half = after === "and" && word(tokens, at + 3, false) === "half";
  return singular &&
    !ARTICLES.has(tokens[at - 1]?.word ?? "") &&
    (half || after === "ago" || (after === "or" && word(tokens, at + 3, false) === "ago"))
    ? { value: { low: 1, high: 1, kind: "cardinal", next: at }, next: at }
    : undefined;
};

const count = (tokens: Tokens, at: number): SlotRead<Said> | undefined => {
  const said = numberAt(tokens, at);
  const found = said ?? article(tokens, at)?.value ?? unsaid(tokens, at)?.value;
  if (found === undefined || found.kind === "run") return undefined;
  const next = ["of", "a", "an", "full", "whole", "solid", "more"].includes(word(tokens, found.next, false))
    ? found.next + 1
    : found.next;
  return { value: found, next };
};

const MONTHS_IN: Partial<Record<TimeUnit, number>> = { month: 1, year: 12 };

/** Two lengths in a unit that suits both: "six months or a year", "a week or ten days". */
const inOneUnit = (a: Length, b: Length): Length => {
  if (a.unit === b.unit) return { ...a, high: b.high };
  const [first, second] = [MONTHS_IN[a.unit], MONTHS_IN[b.unit]];
  if (first !== undefined && second !== undefined)
    return { ...a, low: a.low * first, high: b.high * second, unit: "month" };
  return { ...a, low: a.low * DAYS[a.unit], high: b.high * DAYS[b.unit], unit: "day" };
};

/** "or two", "or ten days" behind the unit. */
const alternative = (tokens: Tokens, length: Length, more: Said): SlotRead<Length> | undefined => {
  const unit = unitAt(tokens, more.next);
  const second: Length = { ...length, low: more.low, high: more.high, unit: unit?.value ?? length.unit };
  const both = inOneUnit(length, second);
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
  if (length.unit !== "year" || unit?.value !== "month") return undefined;
  const months = length.low * 12 + more.low;
  return { value: { ...length, low: months, high: months, unit: "month" }, next: unit.next };
};

/** The length of time that starts at a token, or undefined. */
export const lengthAt = (tokens: Tokens, at: number): SlotRead<Length> | undefined => {
  const start = skipHedges(tokens, at);
  const amount = count(tokens, start);
  if (amount === undefined) return undefined;
  const tail = tailAt(tokens, amount.next);
  const plus = tokens[amount.next + tail]?.raw === "+" ? 1 : 0;
  const unit = unitAt(tokens, amount.next + tail + plus, start);
  if (unit === undefined) return undefined;
  const { low, high, kind } = amount.value;
  const hedged =
    start > at || tail + plus > 0 || kind === "vague" || (amount.next - start > 2 && kind !== "cardinal");
  const length: Length = { low, high, unit: unit.value, about: hedged };
  if (high * DAYS[unit.value] > LONGEST_DAYS) return undefined;
  const longer = addition(tokens, unit.next, length) ?? { value: length, next: unit.next };
  const after = tailAt(tokens, longer.next);
  return { value: { ...longer.value, about: hedged || after > 0 }, next: longer.next + after };
};

/** Nobody speaks of longer in a log. */
const LONGEST_DAYS = 150 * 365;
const DAYS: Record<TimeUnit, number> = {
  minute: 0,
  hour: 0,
  day: 1,
  week: 7,
  fortnight: 14,
  month: 30,
  year: 365,
};

/** A count of one unit as a duration in whole days, months and so on; halves go to the next smaller unit. */
export const durationOf = (amount: number, unit: TimeUnit): Temporal.Duration => {
  if (unit === "hour") return Temporal.Duration.from({ minutes: Math.round(amount * 60) });
  if (unit === "minute") return Temporal.Duration.from({ minutes: Math.round(amount) });
  if (unit === "year") return Temporal.Duration.from({ months: Math.round(amount * 12) });
  if (unit === "month" && Number.isInteger(amount)) return Temporal.Duration.from({ months: amount });
  return Temporal.Duration.from({ days: Math.round(amount * DAYS[unit]) });
};

const USE: Partial<Record<TimeUnit, UseUnit>> = {
  day: "days",
  week: "weeks",
  month: "months",
  year: "years",
};

/** The middle of a range as a single length. */
export const middleOf = (length: Length): Length => {
  const middle = Math.floor((length.low + length.high) / 2);
  return length.low === length.high ? length : { ...length, low: middle, high: middle };
};

/** The length as use that something went through: ranges give their middle rounded down, halves the smaller unit. */
export const exposureOf = ({ low, high, unit }: Length): Exposure | undefined => {
  if (unit === "fortnight") return { count: Math.floor((low + high) * 1), unit: "weeks" };
  const use = USE[unit];
  if (use === undefined) return undefined;
  const middle = (low + high) / 2;
  if (low !== high || Number.isInteger(middle)) return { count: Math.floor(middle), unit: use };
  if (unit === "year") return { count: Math.round(middle * 12), unit: "months" };
  if (unit === "month") return { count: Math.round(middle * 4), unit: "weeks" };
  return { count: Math.floor(middle * DAYS[unit]), unit: "days" };
};
