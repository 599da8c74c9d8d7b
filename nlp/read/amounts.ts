import type { UseUnit } from "../../shared/record.ts";
import type { Token } from "../lexicon/tokens.ts";
import type { Amount, Heard, NumberRef } from "./amount.ts";
import { coinAt, moneyAt } from "./money.ts";
import units from "./units.json" with { type: "json" };
import usage from "./usage.json" with { type: "json" };
import { isClosed, listed } from "./words.ts";

const USE: ReadonlyMap<string, UseUnit> = new Map(
  Object.entries(units.use).flatMap(([unit, words]) => words.map((word) => [word, unit as UseUnit] as const)),
);
const ADJECTIVES = new Set(units.between);
/** "Windstorms", "duststorms": whatever storms they are. */
const STORMS = /storms?$/u;
const useOf = (word: string): UseUnit | undefined =>
  USE.get(word) ?? (STORMS.test(word) ? "storms" : undefined);
const isUse = (word: string): boolean => useOf(word) !== undefined;

/** "Backed the adjuster off six clicks" is no distance, "nine hundred clicks" is. */
const COUNTED = new Set(["clicks", "klicks"]);
const LEAST_COUNTED = 50;

/** "Two bloody days", "three Atlantic storms": one word of any kind before what is counted. */
const isAside = (tokens: readonly Token[], at: number, isNumber: (at: number) => boolean): boolean => {
  const [aside, counted] = [tokens[at], tokens[at + 1]];
  const unit = useOf(counted?.norm ?? "");
  return (
    aside?.kind === "word" &&
    !isNumber(at) &&
    unit !== undefined &&
    unit !== "cycles" &&
    counted?.norm.endsWith("s") === true &&
    counted.norm.length > LONG_ENOUGH &&
    !isClosed(aside.norm)
  );
};
const LONG_ENOUGH = 3;

const useAt = (
  number: NumberRef,
  tokens: readonly Token[],
  isNumber: (at: number) => boolean,
): Amount | undefined => {
  if (number.kind === "ordinal") return undefined;
  for (let at = number.to, skipped = 0; skipped <= 3; at++, skipped++) {
    const token = tokens[at];
    if (token === undefined) return undefined;
    const unit = useOf(token.norm);
    if (unit !== undefined && !(COUNTED.has(token.norm) && number.value < LEAST_COUNTED))
      return { from: number.from, to: at + 1, value: number.value, what: unit };
    if (!ADJECTIVES.has(token.norm) && !isAside(tokens, at, isNumber)) return undefined;
  }
  return undefined;
};

const DIALS = new Set(usage.dials);
const ROLLS = new Set(usage.rolls);
const LEAST_READING = 1000;
/** "Got eight hundred k on it now": so many thousands no meter of a trailer shows. */
const LEAST_DISTANCE = 400;
/** What no trip is as long as. */
const LONGEST_TRIP = 10_000;

const isDial = (word: string): boolean => ODOMETER.has(word) || ODOMETER.has(word.replace(/s$/u, ""));
const ODOMETER = listed("amountsOdometer");

/** "61 870", as a meter is read off. */
const inThousands = (number: NumberRef, next: NumberRef | undefined, { text }: Heard): NumberRef => {
  const [head, tail] = [number, next].map((each) => text.slice(each?.span.start, each?.span.end));
  const joined = next !== undefined && next.span.start - number.span.end === 1;
  return joined && /^\d{1,3}$/u.test(head ?? "") && /^\d{3}$/u.test(tail ?? "")
    ? { ...number, value: number.value * 1000 + next.value, to: next.to }
    : number;
};

const words = (tokens: readonly Token[], from: number, to: number): string[] =>
  tokens.slice(Math.max(0, from), to).map((token) => token.norm);

/** "The odo says 84,210", "88,400 on the clock", "clocked 84,210", "she's got 61,870 on her now". */
const readingAt = (first: NumberRef, next: NumberRef | undefined, heard: Heard): Amount | undefined => {
  const { tokens } = heard;
  const before = words(tokens, first.from - 6, first.from);
  const led = before.some(isDial);
  const number = led ? inThousands(first, next, heard) : first;
  const unit = USE.get(tokens[number.to]?.norm ?? "");
  const to = number.to + (unit === undefined ? 0 : 1);
  const short = /^\s?k\b/iu.test(heard.text.slice(number.span.end)) && number.value < LEAST_READING;
  const value = short ? number.value * 1000 : number.value;
  if (number.kind === "ordinal" || value < LEAST_READING) return undefined;
  const after = words(tokens, to, to + 3);
  const dialled = after[0] === "on" && after[1] === "the" && DIALS.has(after[2] ?? "");
  const close = before.slice(-2);
  const rolled = close.some((word) => ROLLS.has(word)) && unit === undefined;
  const carried =
    !(short && number.value >= LEAST_DISTANCE) &&
    after[0] === "on" &&
    ["her", "it"].includes(after[1] ?? "") &&
    ["got", "has", "showing"].includes(close.at(-1) ?? "");
  if (!led && !dialled && !(value >= LONGEST_TRIP && (rolled || carried))) return undefined;
  return { from: number.from, to: dialled ? to + 3 : to, value, what: "reading" };
};

const overlapsAny = (number: NumberRef, times: readonly { from: number; to: number }[]): boolean =>
  times.some((time) => time.from < number.to && number.from < time.to);

/** The money, use and meter readings among the numbers of a note said in `region`. */
export const amountsIn = (
  text: string,
  tokens: readonly Token[],
  numbers: readonly NumberRef[],
  times: readonly { from: number; to: number }[],
  region: string,
): Amount[] => {
  const isTime = (number: NumberRef) => overlapsAny(number, times);
  const heard: Heard = { tokens, text, region, isTime, isUse };
  const starts = new Map(numbers.map((number) => [number.from, number]));
  const found: Amount[] = [];
  let covered = 0;
  numbers.forEach((number, index) => {
    if (number.from < covered) return;
    const amount =
      readingAt(number, numbers[index + 1], heard) ??
      moneyAt(number, numbers[index + 1], heard) ??
      useAt(number, tokens, (at) => starts.has(at));
    if (amount === undefined) return;
    found.push(amount);
    covered = amount.to;
  });
  const coins = tokens.flatMap((_, at) => coinAt(at, starts, heard) ?? []);
  const free = coins.filter((coin) => found.every(({ from, to }) => coin.to <= from || coin.from >= to));
  return [...found, ...free].sort((a, b) => a.from - b.from);
};
