import { BEFORE_ONE, TEEN_WORDS, TEN_WORDS, UNIT_WORDS } from "./number-words.ts";
import type { Token } from "./tokens.ts";

/** A number read from tokens: `next` is the index after it. */
export type Read = { readonly value: number; readonly next: number };
type Tokens = readonly Token[];

export const wordAt = (tokens: Tokens, at: number): string | undefined => {
  const token = tokens[at];
  return token === undefined || token.gap === "stop" || token.gap === "comma" ? undefined : token.raw;
};
/** The word at a place where something may begin. */
export const headAt = (tokens: Tokens, at: number): string => tokens[at]?.raw ?? "";
type WordAt = (tokens: Tokens, at: number) => string | undefined;
type ReadNumber = (tokens: Tokens, at: number, look: WordAt) => Read | undefined;

/** "-" between the words of one number: "twenty-three". */
const skipHyphen = (tokens: Tokens, at: number): number =>
  tokens[at]?.raw === "-" && tokens[at].gap === "none" && tokens[at + 1]?.gap === "none" ? at + 1 : at;

/** "84,210" has thousands, "27,50" hundredths. */
const digitsOf = (word: string): number | undefined =>
  /^\d/u.test(word)
    ? Number(word.replace(/^(\d{1,6}),(\d{1,2})$/u, "$1.$2").replace(/,(?=\d{3}(?!\d))/gu, ""))
    : undefined;

/** 0 to 99 in words: "forty", "forty one", "seven". */
export const underHundred = (tokens: Tokens, at: number, look: WordAt = headAt): Read | undefined => {
  const word = look(tokens, at) ?? "";
  const small = TEEN_WORDS.get(word) ?? UNIT_WORDS.get(word);
  if (small !== undefined) return { value: small, next: at + 1 };
  const tens = TEN_WORDS.get(word);
  if (tens === undefined) return undefined;
  const unitAt = skipHyphen(tokens, at + 1);
  const unit = UNIT_WORDS.get(wordAt(tokens, unitAt) ?? "");
  return unit === undefined || unit === 0
    ? { value: tens, next: at + 1 }
    : { value: tens + unit, next: unitAt + 1 };
};

const base = (tokens: Tokens, at: number, look: WordAt): Read | undefined => {
  const word = look(tokens, at) ?? "";
  const digits = digitsOf(word);
  if (digits !== undefined && !Number.isNaN(digits)) return { value: digits, next: at + 1 };
  const following = wordAt(tokens, at + 1);
  if ((word === "a" || word === "an") && (following === "hundred" || following === "thousand"))
    return { value: 1, next: at + 1 };
  /** "Hundred and ten", without its article. */
  if (look === headAt && (word === "hundred" || word === "thousand")) return { value: 1, next: at };
  return underHundred(tokens, at, look);
};

/** "A hundred and ten", "a hundred n ten". */
const JOINS: ReadonlySet<string> = new Set(["and", "n", "&"]);

const rest = (
  tokens: Tokens,
  at: number,
  unit: { readonly word: string; readonly size: number },
  inner: ReadNumber,
): Read | undefined => {
  const start = JOINS.has(wordAt(tokens, at) ?? "") ? at + 1 : at;
  const found = wordAt(tokens, start) === undefined ? undefined : inner(tokens, start, wordAt);
  if (found === undefined || found.value === 0 || found.value >= unit.size) return undefined;
  /** "Sixteen hundred sixteen hundred" is one number said twice. */
  return wordAt(tokens, found.next) === unit.word ? undefined : found;
};

const multiplied = (
  tokens: Tokens,
  at: number,
  found: Read,
  unit: { word: string; size: number },
  inner: ReadNumber,
): Read => {
  const look = found.next === at ? headAt : wordAt;
  if (look(tokens, found.next) !== unit.word) return found;
  const value = found.value * unit.size;
  const more = rest(tokens, found.next + 1, unit, inner);
  return more === undefined
    ? { value, next: found.next + 1 }
    : { value: value + more.value, next: more.next };
};

const hundreds = (tokens: Tokens, at: number, look: WordAt = headAt): Read | undefined => {
  const found = base(tokens, at, look);
  return found && multiplied(tokens, at, found, { word: "hundred", size: 100 }, base);
};

/** A whole number in words or digits: "two hundred and twelve", "eleven hundred", "3 thousand", "84,210". */
export const cardinalAt = (tokens: Tokens, at: number, look: WordAt = headAt): Read | undefined => {
  const found = hundreds(tokens, at, look);
  return found && multiplied(tokens, at, found, { word: "thousand", size: 1000 }, hundreds);
};

/** Pieces of the longest number that anybody says digit by digit. */
const LONGEST_RUN = 10;

const chunks = (
  tokens: Tokens,
  at: number,
): { readonly values: readonly number[]; readonly next: number } => {
  const values: number[] = [];
  let next = at;
  while (values.length < LONGEST_RUN) {
    const chunk = underHundred(tokens, next, next === at ? headAt : wordAt);
    if (chunk === undefined) break;
    values.push(chunk.value);
    next = chunk.next;
  }
  return { values, next };
};

const CENTURIES = new Set([19, 20]);
/** "Forty two forty two", "one ninety five one ninety five"; but "twenty twenty" is a year. */
const saidTwice = (values: readonly number[]): boolean => {
  const half = values.length / 2;
  return (
    Number.isInteger(half) &&
    values.slice(half).every((value, at) => value === values[at]) &&
    (half > 1 || ((values[0] ?? 0) > 20 && !CENTURIES.has(values[0] ?? 0)))
  );
};

const MAKES: ReadonlySet<string> = new Set(["make", "made", "call"]);

/** "A new one forty four dollars", "a heavier one twenty eight": one thing; but "make that one ninety". */
const standsFor = (tokens: Tokens, at: number): boolean => {
  const before = tokens[at - 1]?.raw ?? "";
  if (!BEFORE_ONE.has(before)) return false;
  const isSum = before === "that" && MAKES.has(tokens[at - 2]?.raw ?? "");
  return !(isSum && TEN_WORDS.has(wordAt(tokens, at + 1) ?? ""));
};

/**
 * Numbers said in pieces: "one ninety five" 195, "twenty twenty three" 2023, "eighty four two ten" 84210,
 * "one four two oh three six" 142036. Undefined for a single piece.
 */
export const runAt = (tokens: Tokens, at: number): Read | undefined => {
  if (headAt(tokens, at) === "one" && standsFor(tokens, at)) return undefined;
  const { values, next } = chunks(tokens, at);
  const [first = 0, second = 0] = values;
  if (values.length < 2 || first === 0) return undefined;
  if (values.length === 2 && (second < 10 || first % 10 === 0) && !(first >= 19 && second >= 10))
    return undefined;
  const value = Number((saidTwice(values) ? values.slice(values.length / 2) : values).join(""));
  return Number.isSafeInteger(value) && values.length <= 9 ? { value, next } : undefined;
};
