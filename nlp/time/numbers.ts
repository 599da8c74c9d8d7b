import type { Span } from "../../shared/reading.ts";
import { cardinalAt, headAt, type Read, runAt, underHundred, wordAt } from "./cardinal.ts";
import { FRACTION_SIGNS, ORDINAL_WORDS, PART_WORDS, TEN_WORDS, VAGUE_WORDS } from "./number-words.ts";
import { type Token, tokenize } from "./tokens.ts";

type Tokens = readonly Token[];
export type NumberKind = "cardinal" | "ordinal" | "fraction" | "run" | "vague";

/** A number as said. `low` and `high` differ for a range; `next` is the index of the token after it. */
export type Said = {
  readonly low: number;
  readonly high: number;
  readonly kind: NumberKind;
  readonly next: number;
};

/** A number in a text; `value` is the middle of a range, rounded down when both ends are whole. */
export type FoundNumber = Omit<Said, "next"> & { readonly span: Span; readonly value: number };

const one = (read: Read, kind: NumberKind): Said => ({
  low: read.value,
  high: read.value,
  kind,
  next: read.next,
});

const DIGIT_ORDINAL = /^(?:st|nd|rd|th)$/u;

/** "third", "twenty first", "3rd". */
export const ordinalAt = (tokens: Tokens, at: number): Said | undefined => {
  const word = headAt(tokens, at);
  const plain = ORDINAL_WORDS.get(word);
  if (plain !== undefined) return one({ value: plain, next: at + 1 }, "ordinal");
  const suffix = tokens[at + 1];
  if (
    /^\d+$/u.test(word) &&
    (suffix?.gap === "none" || suffix?.gap === "space") &&
    DIGIT_ORDINAL.test(suffix.raw)
  )
    return one({ value: Number(word), next: at + 2 }, "ordinal");
  const tens = TEN_WORDS.get(word);
  const unitAt = tokens[at + 1]?.raw === "-" ? at + 2 : at + 1;
  const unit = ORDINAL_WORDS.get(wordAt(tokens, unitAt) ?? "");
  return tens !== undefined && unit !== undefined && unit < 10
    ? one({ value: tens + unit, next: unitAt + 1 }, "ordinal")
    : undefined;
};

const slashFraction = (tokens: Tokens, at: number): Read | undefined => {
  const [top, slash, bottom] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  if (slash?.raw !== "/" || slash.gap !== "none" || bottom?.gap !== "none") return undefined;
  const [numerator, denominator] = [Number(top?.raw), Number(bottom.raw)];
  return [2, 3, 4, 8, 16, 32, 64].includes(denominator) && numerator > 0 && numerator < denominator
    ? { value: numerator / denominator, next: at + 3 }
    : undefined;
};

const spokenFraction = (tokens: Tokens, at: number): Read | undefined => {
  const word = headAt(tokens, at);
  if (word === "half") return { value: 0.5, next: wordAt(tokens, at + 1) === "a" ? at + 2 : at + 1 };
  const top = word === "a" || word === "an" ? { value: 1, next: at + 1 } : underHundred(tokens, at);
  if (top === undefined) return undefined;
  const partAt = tokens[top.next]?.raw === "-" ? top.next + 1 : top.next;
  const part = PART_WORDS.get(wordAt(tokens, partAt) ?? "");
  return part === undefined || top.value >= part ? undefined : { value: top.value / part, next: partAt + 1 };
};

const fractionAt = (tokens: Tokens, at: number): Read | undefined => {
  const sign = FRACTION_SIGNS.get(headAt(tokens, at));
  if (sign !== undefined) return { value: sign, next: at + 1 };
  return slashFraction(tokens, at) ?? spokenFraction(tokens, at);
};

/** "and a half" and the like after a whole number. */
const withFraction = (tokens: Tokens, whole: Read): Read => {
  const joiner = tokens[whole.next];
  if (joiner === undefined || joiner.gap === "stop" || joiner.gap === "comma") return whole;
  const start = joiner.raw === "and" || joiner.raw === "-" ? whole.next + 1 : whole.next;
  const written = start > whole.next || /^(?:\d|[½¼¾⅓⅔⅛⅜⅝⅞])/u.test(joiner.raw);
  const fraction = written ? fractionAt(tokens, start) : undefined;
  return fraction === undefined ? whole : { value: whole.value + fraction.value, next: fraction.next };
};

/** "two point five". */
const withPoint = (tokens: Tokens, whole: Read): Read => {
  if (wordAt(tokens, whole.next) !== "point") return whole;
  const digits = underHundred(tokens, whole.next + 1, wordAt) ?? cardinalAt(tokens, whole.next + 1, wordAt);
  return digits === undefined
    ? whole
    : { value: Number(`${whole.value}.${digits.value}`), next: digits.next };
};

/** "a couple of", "few", "a dozen", "a few hundred". */
const vagueAt = (tokens: Tokens, at: number): Said | undefined => {
  const hasArticle = headAt(tokens, at) === "a";
  const start = hasArticle ? at + 1 : at;
  const vague = VAGUE_WORDS.get((hasArticle ? wordAt(tokens, start) : headAt(tokens, at)) ?? "");
  if (vague === undefined) return undefined;
  const next = wordAt(tokens, start + 1) === "of" ? start + 2 : start + 1;
  const times = { dozen: 12, hundred: 100, thousand: 1000 }[wordAt(tokens, next) ?? ""];
  if (times === undefined) return { low: vague[0], high: vague[1], kind: "vague", next };
  return { low: vague[0] * times, high: vague[1] * times, kind: "vague", next: next + 1 };
};

const halfDozen = (tokens: Tokens, at: number): Said | undefined => {
  const dozenAt = wordAt(tokens, at + 1) === "a" ? at + 2 : at + 1;
  return headAt(tokens, at) === "half" && wordAt(tokens, dozenAt) === "dozen"
    ? one({ value: 6, next: dozenAt + 1 }, "vague")
    : undefined;
};

const dozens = (tokens: Tokens, said: Said): Said =>
  wordAt(tokens, said.next) === "dozen"
    ? { ...said, low: said.low * 12, high: said.high * 12, next: said.next + 1 }
    : said;

const MONEY_BEFORE = new Set(["r", "zar", "$", "€", "£", "eur", "kr"]);

/** "R2 680": a sum with its thousands set apart. */
const setApart = (tokens: Tokens, at: number): Read | undefined => {
  const head = tokens[at]?.raw ?? "";
  if (!/^[1-9]\d{0,2}$/u.test(head) || !MONEY_BEFORE.has(tokens[at - 1]?.raw.toLowerCase() ?? ""))
    return undefined;
  let next = at + 1;
  while (tokens[next]?.gap === "space" && /^\d{3}$/u.test(tokens[next]?.raw ?? "")) next++;
  const digits = tokens.slice(at, next).map(({ raw }) => raw);
  return next === at + 1 ? undefined : { value: Number(digits.join("")), next };
};

/** Numbers below this are said straight after each other as a range. */
const MOST_FOLLOWED = 13;
/** "Nine ten times": a number and the one after it are from one to the other. */
const isFollowed = (tokens: Tokens, first: Read | undefined): boolean => {
  if (first === undefined || first.value >= MOST_FOLLOWED || wordAt(tokens, first.next) === undefined)
    return false;
  const second = cardinalAt(tokens, first.next, wordAt);
  return (
    /^\p{L}/u.test(tokens[first.next]?.raw ?? "") &&
    second?.value === first.value + 1 &&
    second.next === first.next + 1
  );
};

const exactAt = (tokens: Tokens, at: number): Said | undefined => {
  const sum = setApart(tokens, at);
  if (sum !== undefined) return one(sum, "cardinal");
  const fraction = fractionAt(tokens, at);
  if (fraction !== undefined) return one(fraction, "fraction");
  const whole = cardinalAt(tokens, at);
  const run = isFollowed(tokens, whole) ? undefined : runAt(tokens, at);
  if (run !== undefined && run.next > (whole?.next ?? 0)) return one(run, "run");
  return whole && one(saidAgain(tokens, at, withPoint(tokens, withFraction(tokens, whole))), "cardinal");
};

/** "Sixteen hundred, sixteen hundred miles", "two hundred two hundred and forty": said again to be sure or to go on. */
const saidAgain = (tokens: Tokens, at: number, said: Read): Read => {
  const length = said.next - at;
  const again =
    length > 1 && tokens.slice(at, said.next).every(({ raw }, i) => tokens[said.next + i]?.raw === raw);
  const second = again && /^\p{L}/u.test(tokens[at]?.raw ?? "") ? cardinalAt(tokens, said.next) : undefined;
  return second === undefined || second.next < said.next + length
    ? said
    : withPoint(tokens, withFraction(tokens, second));
};

const simpleAt = (tokens: Tokens, at: number): Said | undefined => {
  const said = halfDozen(tokens, at) ?? vagueAt(tokens, at) ?? exactAt(tokens, at);
  return said && dozens(tokens, said);
};

/** The second half of a range: after "or", "to", "-", or the next number said straight after ("two three"). */
const upperAt = (tokens: Tokens, low: Said): Said | undefined => {
  const joiner = tokens[low.next];
  if (joiner === undefined || joiner.gap === "stop") return undefined;
  const start = /^(?:or|to|-|–|—)$/u.test(joiner.raw) ? low.next + 1 : low.next;
  const high = simpleAt(tokens, start);
  if (high === undefined || high.low <= low.low || high.kind === "fraction") return undefined;
  if (start > low.next) return high;
  const near = low.high < 10 || (low.high < MOST_FOLLOWED && joiner.gap === "space");
  return near && high.high === low.high + 1 && /^\p{L}/u.test(joiner.raw) ? high : undefined;
};

/** The number that starts at a token, ranges included: "fifteen or twenty", "2-3", "a couple of". */
export const numberAt = (tokens: Tokens, at: number): Said | undefined => {
  const low = simpleAt(tokens, at);
  if (low === undefined) return undefined;
  const high = upperAt(tokens, low);
  return high === undefined ? low : { low: low.low, high: high.high, kind: low.kind, next: high.next };
};

const middle = ({ low, high }: Said): number => {
  const value = (low + high) / 2;
  return Number.isInteger(low) && Number.isInteger(high) ? Math.floor(value) : value;
};

/** Every number in a text, in words or digits, from left to right, none overlapping. */
export const findNumbers = (text: string): readonly FoundNumber[] => {
  const tokens = tokenize(text);
  const found: FoundNumber[] = [];
  for (let at = 0; at < tokens.length; ) {
    const said = ordinalAt(tokens, at) ?? numberAt(tokens, at);
    const [first, last] = [tokens[at], said && tokens[said.next - 1]];
    if (said === undefined || first === undefined || last === undefined) {
      at++;
      continue;
    }
    const { next, ...rest } = said;
    found.push({ ...rest, value: middle(said), span: { start: first.start, end: last.end } });
    at = next;
  }
  return found;
};

/** The number that a text begins with, or undefined: spokenNumber("two hundred and twelve") is 212. */
export const spokenNumber = (text: string): number | undefined => {
  const said = numberAt(tokenize(text), 0);
  return said && middle(said);
};
