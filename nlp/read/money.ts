import type { Amount, Heard, NumberRef } from "./amount.ts";
import { bareMoneyAt } from "./bare-money.ts";
import data from "./money.json" with { type: "json" };
import { priceOf, thousandsOf, writtenPrice } from "./prices.ts";

const BEFORE = new Set(data.before);
const AFTER = new Set(data.after);
const WEIGHTS = new Set(data.weights);
const PARTS = new Set(data.parts);
const BETWEEN = new Set(data.between);
const COINS: ReadonlyMap<string, number> = new Map(Object.entries(data.coins));

const MOST_BETWEEN = 2;
const THOUSAND = 1000;

const isAbroad = (region: string): boolean => region !== "GB" && region !== "IE";
const WEIGHED = new Set([
  "weighs",
  "weigh",
  "weighing",
  "whos",
  "hes",
  "shes",
  "at",
  "to",
  "hold",
  "holds",
  "rated",
  "torqued",
  "pressure",
  "inflated",
]);

/** "Two hundred pounds" is a weight where money is told in dollars, and of what is weighed anywhere. */
const isWeight = (number: NumberRef, unit: string, at: number, { tokens, region }: Heard): boolean => {
  if (!WEIGHTS.has(unit)) return false;
  if (isAbroad(region) || WEIGHED.has(tokens[number.from - 1]?.norm ?? "")) return true;
  return ["of", "per", "in", "pressure", "cold"].includes(tokens[at + 1]?.norm ?? "");
};

/** The currency behind a number, and the token after it. */
const currencyAfter = (number: NumberRef, heard: Heard): { unit: string; to: number } | undefined => {
  const glued =
    /^\s?(\p{L}+|[$£€])/u.exec(heard.text.slice(number.span.end, number.span.end + 12))?.[0] ?? "";
  if (!glued.startsWith(" ") && (AFTER.has(glued.toLowerCase()) || PARTS.has(glued.toLowerCase())))
    return { unit: glued.toLowerCase(), to: number.to };
  for (let at = number.to; at <= number.to + MOST_BETWEEN; at++) {
    const word = heard.tokens[at]?.norm ?? "";
    if (AFTER.has(word) || PARTS.has(word))
      return isWeight(number, word, at, heard) ? undefined : { unit: word, to: at + 1 };
    if (!BETWEEN.has(word)) return undefined;
  }
  return undefined;
};

/** "eighteen dollars fifty", "nineteen euro and fifty cents": the number straight after the currency. */
const withCents = (
  value: number,
  to: number,
  next: NumberRef | undefined,
  { tokens, isUse }: Heard,
): { value: number; to: number } => {
  const from = tokens[to]?.norm === "and" ? to + 1 : to;
  const after = tokens[next?.to ?? 0]?.norm ?? "";
  const cents =
    next?.from === from &&
    next.value < 100 &&
    next.value >= 5 &&
    Number.isInteger(value) &&
    Number.isInteger(next.value);
  const counts = isUse(after) || (from > to && isUse(tokens[(next?.to ?? 0) + 1]?.norm ?? ""));
  if (next === undefined || !cents || counts || AFTER.has(after)) return { value, to };
  return { value: value + next.value / 100, to: PARTS.has(after) ? next.to + 1 : next.to };
};

const RAND = /\bR\s?$/iu;
/** The token where a currency before a number stands, "R260" being one. */
const currencyBefore = (number: NumberRef, { tokens, text, region }: Heard): number | undefined => {
  if (BEFORE.has(tokens[number.from - 1]?.norm ?? "")) return number.from - 1;
  const lead = text.slice(Math.max(0, number.span.start - 3), number.span.start);
  if (/[$£€]\s?$/u.test(lead)) return number.from;
  if (region !== "ZA" || !RAND.test(lead)) return undefined;
  return /\s$/u.test(lead) ? number.from - 1 : number.from;
};

/** Money with its currency, or a bare number that the words around make money. */
export const moneyAt = (number: NumberRef, next: NumberRef | undefined, heard: Heard): Amount | undefined => {
  if (number.kind === "ordinal") return undefined;
  const price = writtenPrice(number, heard) ?? priceOf(number, heard.tokens);
  const { by, to } = thousandsOf(number, heard);
  const before = currencyBefore(number, heard);
  if (before !== undefined)
    return number.kind === "fraction" ? undefined : { from: before, to, value: price * by, what: "money" };
  if (heard.tokens[number.to]?.norm === "grand")
    return { from: number.from, to, value: number.value * by, what: "money" };
  if (number.kind === "fraction") return undefined;
  const after = currencyAfter(number, heard);
  if (after === undefined) return bareMoneyAt(number, heard);
  if (PARTS.has(after.unit))
    return (isPlural(after.unit) || after.to === number.to) &&
      !(isAbroad(heard.region) && after.unit === "p") &&
      number.value < 100
      ? { from: number.from, to: after.to, value: number.value / 100, what: "money" }
      : undefined;
  const full = withCents(price, after.to, next, heard);
  return { from: number.from, to: full.to, value: full.value, what: "money" };
};

const isPlural = (unit: string): boolean => unit.length > 1;

const ENDS = new Set([
  "",
  "for",
  "on",
  "all",
  "in",
  "to",
  "and",
  "but",
  "so",
  "plus",
  "of",
  "out",
  "later",
  "easy",
]);

/** "A grand", "a fiver", "a buck fifty": sums without a number. */
export const coinAt = (
  at: number,
  numbers: ReadonlyMap<number, NumberRef>,
  { tokens }: Heard,
): Amount | undefined => {
  const [word, before, after] = [tokens[at]?.norm ?? "", tokens[at - 1]?.norm ?? "", tokens[at + 1]];
  const coin = COINS.get(word);
  if (coin !== undefined) return { from: at, to: at + 1, value: coin, what: "money" };
  if (before !== "a" && before !== "another") return undefined;
  if (word === "grand" && (after === undefined || after.kind === "mark" || ENDS.has(after.norm)))
    return { from: at - 1, to: at + 1, value: THOUSAND, what: "money" };
  if (word !== "buck") return undefined;
  const cents = numbers.get(at + 1);
  const value = cents !== undefined && cents.value < 100 && cents.value >= 5 ? 1 + cents.value / 100 : 1;
  return { from: at - 1, to: value > 1 ? (cents?.to ?? at + 1) : at + 1, value, what: "money" };
};
