import type { UseUnit } from "../../shared/record.ts";
import type { Token } from "../lexicon/tokens.ts";
import units from "./units.json" with { type: "json" };
import { listed } from "./words.ts";

/** A count of money or of use among the tokens. */
export type Amount = {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly what: "money" | UseUnit | "reading";
};

export type NumberRef = {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly kind: string;
  readonly low: number;
  readonly high: number;
};

const MONEY_BEFORE = new Set(units.money.before);
const MONEY_AFTER = new Set(units.money.after);
const MONEY_CUES = new Set(units.money.cues);
const USE: ReadonlyMap<string, UseUnit> = new Map(
  Object.entries(units.use).flatMap(([unit, words]) => words.map((word) => [word, unit as UseUnit] as const)),
);
const ADJECTIVES = new Set(units.between);

/** "twelve fifty" as money is 12.5. */
export const priceOf = (number: NumberRef, tokens: readonly Token[]): number => {
  const said = tokens.slice(number.from, number.to);
  const isRun = number.kind === "run" && said.every((token) => token.kind === "word");
  if (!isRun || number.value < 1000) return number.value;
  const [whole, cents] = [Math.floor(number.value / 100), number.value % 100];
  return number.value < 10_000 && whole < 100 && cents > 0 ? whole + cents / 100 : number.value;
};

/** "eighteen dollars fifty", "nineteen euro fifty": the number straight after the currency. */
const withCents = (
  value: number,
  next: NumberRef | undefined,
  at: number,
  tokens: readonly Token[],
): { value: number; to: number } => {
  const from = tokens[at]?.norm === "and" ? at + 1 : at;
  const fits =
    next?.from === from &&
    next.value < 100 &&
    next.value >= 5 &&
    Number.isInteger(value) &&
    Number.isInteger(next.value);
  if (
    !fits ||
    USE.has(tokens[next.to]?.norm ?? "") ||
    (MONEY_AFTER.has(tokens[next.to]?.norm ?? "") &&
      !["cents", "pence", "p"].includes(tokens[next.to]?.norm ?? ""))
  )
    return { value, to: at };
  return { value: value + next.value / 100, to: next.to };
};

/** "27,50" and "189.00" as written: two places after the mark. */
const written = (number: NumberRef, tokens: readonly Token[]): number | undefined => {
  const text = number.to - number.from === 1 ? (tokens[number.from]?.text ?? "") : "";
  return /^\d{1,5}[.,]\d{2}$/.test(text) ? Number(text.replace(",", ".")) : undefined;
};
const UNITS = listed("amountsUnits");

const moneyAt = (
  number: NumberRef,
  next: NumberRef | undefined,
  tokens: readonly Token[],
): Amount | undefined => {
  const before = tokens[number.from - 1]?.norm ?? "";
  const after = tokens[number.to]?.norm ?? "";
  if (number.kind === "ordinal" || number.kind === "fraction") return undefined;
  const decimal = written(number, tokens);
  if (MONEY_BEFORE.has(before))
    return { from: number.from - 1, to: number.to, value: decimal ?? number.value, what: "money" };
  if (MONEY_AFTER.has(after)) {
    if (["cents", "pence", "p"].includes(after)) return undefined;
    if (
      after === "pounds" &&
      ["of", "per", "in", "pressure", "cold"].includes(tokens[number.to + 1]?.norm ?? "")
    )
      return undefined;
    const full = withCents(decimal ?? priceOf(number, tokens), next, number.to + 1, tokens);
    return { from: number.from, to: full.to, value: full.value, what: "money" };
  }
  return undefined;
};

/** "cost me a hundred and sixty five", "part was one ninety five", "for forty two all in": money without its unit. */
const bareMoneyAt = (number: NumberRef, tokens: readonly Token[]): Amount | undefined => {
  if (["ordinal", "fraction", "vague"].includes(number.kind)) return undefined;
  const around = tokens.slice(Math.max(0, number.from - 4), number.from).map((token) => token.norm);
  const [after, second, third] = [0, 1, 2].map((ahead) => tokens[number.to + ahead]?.norm ?? "");
  const allIn = after === "all" && second === "in";
  const lot =
    after === "for" &&
    (second === "the" || second === "all") &&
    ["lot", "set", "pair", "four", "six", "two", "both", "job"].includes(third ?? "");
  const decimal = written(number, tokens);
  const priced =
    around.some((word) => MONEY_CUES.has(word)) || allIn || lot || (decimal !== undefined && decimal >= 1);
  if (!priced || UNITS.has(after ?? "") || USE.has(after ?? "")) return undefined;
  return {
    from: number.from,
    to: number.to + (allIn ? 2 : 0),
    value: decimal ?? priceOf(number, tokens),
    what: "money",
  };
};

/** "got a new housing nineteen ninety five": a year has "in" or the like before it. */
const boughtFor = (number: NumberRef, tokens: readonly Token[]): Amount | undefined => {
  if (number.kind !== "run" || number.value < 1000 || number.value > 9999) return undefined;
  const around = tokens.slice(Math.max(0, number.from - 6), number.from).map((token) => token.norm);
  const dated = [
    "in",
    "of",
    "since",
    "back",
    "from",
    "year",
    "spring",
    "summer",
    "fall",
    "autumn",
    "winter",
    "early",
    "late",
    "made",
    "built",
  ].includes(around.at(-1) ?? "");
  const bought = around.some((word) => ["got", "bought", "new", "picked"].includes(word));
  return bought && !dated
    ? { from: number.from, to: number.to, value: priceOf(number, tokens), what: "money" }
    : undefined;
};

/** "Backed the adjuster off six clicks" is no distance, "nine hundred clicks" is. */
const COUNTED = new Set(["clicks", "klicks"]);
const LEAST_COUNTED = 50;

const useAt = (number: NumberRef, tokens: readonly Token[]): Amount | undefined => {
  if (number.kind === "ordinal") return undefined;
  for (let at = number.to, skipped = 0; skipped <= 3; at++, skipped++) {
    const token = tokens[at];
    if (token === undefined) return undefined;
    const unit = USE.get(token.norm);
    if (unit !== undefined && !(COUNTED.has(token.norm) && number.value < LEAST_COUNTED))
      return { from: number.from, to: at + 1, value: number.value, what: unit };
    if (!ADJECTIVES.has(token.norm)) return undefined;
  }
  return undefined;
};

const ODOMETER = listed("amountsOdometer");
const readingAt = (number: NumberRef, tokens: readonly Token[]): Amount | undefined => {
  const around = tokens.slice(Math.max(0, number.from - 6), number.from).map((token) => token.norm);
  const digitsLong = number.value >= 1000;
  if (!digitsLong || !around.some((word) => ODOMETER.has(word) || ODOMETER.has(word.replace(/s$/, ""))))
    return undefined;
  const unit = USE.get(tokens[number.to]?.norm ?? "");
  return {
    from: number.from,
    to: number.to + (unit === undefined ? 0 : 1),
    value: number.value,
    what: "reading",
  };
};

const overlapsAny = (number: NumberRef, times: readonly { from: number; to: number }[]): boolean =>
  times.some((time) => time.from < number.to && number.from < time.to);

/** The money, use and meter readings among the numbers of a note. */
export const amountsIn = (
  tokens: readonly Token[],
  numbers: readonly NumberRef[],
  times: readonly { from: number; to: number }[],
): Amount[] => {
  const found: Amount[] = [];
  let covered = 0;
  numbers.forEach((number, index) => {
    if (number.from < covered) return;
    const amount =
      readingAt(number, tokens) ??
      moneyAt(number, numbers[index + 1], tokens) ??
      useAt(number, tokens) ??
      boughtFor(number, tokens) ??
      (overlapsAny(number, times) ? undefined : bareMoneyAt(number, tokens));
    if (amount === undefined) return;
    found.push(amount);
    covered = amount.to;
  });
  return found;
};
