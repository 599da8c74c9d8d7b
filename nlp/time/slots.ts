import { runAt, underHundred, wordAt } from "./cardinal.ts";
import { isAmong } from "./context.ts";
import { HOLIDAY_HEADS, holidayAt, holidaysAt } from "./holidays.ts";
import { lengthAt } from "./length-reader.ts";
import { DAY_PARTS, MONTHS, SEASONS, UNITS, WEEKDAYS } from "./lexicon.ts";
import { ORDINAL_WORDS, TEEN_WORDS, TEN_WORDS, UNIT_WORDS, VAGUE_WORDS } from "./number-words.ts";
import { numberAt, ordinalAt } from "./numbers.ts";
import type { SlotRead } from "./pattern.ts";
import type { Reference } from "./reference.ts";
import type { SlotName, SlotValues } from "./rule.ts";
import type { Token } from "./tokens.ts";

type Tokens = readonly Token[];
type Reader<T> = (tokens: Tokens, at: number, reference: Reference) => SlotRead<T> | undefined;

const named =
  <T>(names: { readonly get: (word: string) => T | undefined }): Reader<T> =>
  (tokens, at) => {
    const value = names.get(tokens[at]?.word ?? "");
    return value === undefined ? undefined : { value, next: at + 1 };
  };

const plural =
  <T>(names: ReadonlyMap<string, T>): Reader<T> =>
  (tokens, at) => {
    const word = tokens[at]?.raw ?? "";
    const value = word.endsWith("s") ? names.get(word.slice(0, -1)) : undefined;
    return value === undefined ? undefined : { value, next: at + 1 };
  };

const within = (
  read: SlotRead<number> | undefined,
  low: number,
  high: number,
): SlotRead<number> | undefined =>
  read !== undefined && read.value >= low && read.value <= high ? read : undefined;

const twoThousand = (tokens: Tokens, at: number): SlotRead<number> | undefined => {
  if (tokens[at]?.raw !== "two" || wordAt(tokens, at + 1) !== "thousand") return undefined;
  const said = numberAt(tokens, at);
  return said === undefined ? undefined : { value: said.low, next: said.next };
};

/** "20 23", as a recogniser may print it. */
const inHalves = (tokens: Tokens, at: number): SlotRead<number> | undefined => {
  const [first, second] = [tokens[at]?.raw ?? "", wordAt(tokens, at + 1) ?? ""];
  return /^(?:19|20)$/u.test(first) && /^\d\d$/u.test(second)
    ? { value: Number(first + second), next: at + 2 }
    : undefined;
};

const fullYear: Reader<number> = (tokens, at) => {
  const raw = tokens[at]?.raw ?? "";
  const digits = /^(?:19|20)\d{2}$/u.test(raw) ? { value: Number(raw), next: at + 1 } : undefined;
  return within(digits ?? inHalves(tokens, at) ?? twoThousand(tokens, at) ?? runAt(tokens, at), 1950, 2099);
};

/** "'21" or "21'", with its apostrophe. */
export const isApostropheYear = (token: Token | undefined): boolean =>
  token !== undefined && token.end - token.start === 3 && /^\d\d$/u.test(token.raw);

const century = (value: number): number => (value < 60 ? 2000 : 1900) + value;

/** "oh nine". */
const ohYear = (tokens: Tokens, at: number): SlotRead<number> | undefined => {
  if (!/^(?:oh|o|aught|ought)$/u.test(tokens[at]?.raw ?? "")) return undefined;
  const unit = UNIT_WORDS.get(wordAt(tokens, tokens[at + 1]?.raw === "-" ? at + 2 : at + 1) ?? "");
  return unit === undefined || unit === 0
    ? undefined
    : { value: 2000 + unit, next: tokens[at + 1]?.raw === "-" ? at + 3 : at + 2 };
};

const looseYear: Reader<number> = (tokens, at, reference) => {
  const full = fullYear(tokens, at, reference) ?? ohYear(tokens, at);
  if (full !== undefined) return full;
  const token = tokens[at];
  if (token === undefined) return undefined;
  const two = /^\d{2}$/u.test(token.raw)
    ? { value: Number(token.raw), next: at + 1 }
    : underHundred(tokens, at);
  if (two === undefined || (UNITS.has(tokens[two.next]?.word ?? "") && !isApostropheYear(token)))
    return undefined;
  return within({ value: century(two.value), next: two.next }, 1980, reference.today.year + 5);
};

const monthDay: Reader<number> = (tokens, at) => {
  const ordinal = ordinalAt(tokens, at);
  if (ordinal !== undefined) return within({ value: ordinal.low, next: ordinal.next }, 1, 31);
  const raw = tokens[at]?.raw ?? "";
  const plain = /^\d{1,2}$/u.test(raw) ? { value: Number(raw), next: at + 1 } : underHundred(tokens, at);
  return plain !== undefined && isAmong("counted", wordAt(tokens, plain.next) ?? "")
    ? undefined
    : within(plain, 1, 31);
};

export const SLOTS: { readonly [K in Exclude<SlotName, "when" | `${string}2`>]: Reader<SlotValues[K]> } = {
  n: (tokens, at) => {
    const said = numberAt(tokens, at);
    return said && { value: said, next: said.next };
  },
  unit: named(UNITS),
  length: lengthAt,
  month: named(MONTHS),
  weekday: named(WEEKDAYS),
  season: named(SEASONS),
  year: fullYear,
  loose: looseYear,
  ord: (tokens, at) => {
    const ordinal = ordinalAt(tokens, at);
    return ordinal && within({ value: ordinal.low, next: ordinal.next }, 1, 31);
  },
  mday: monthDay,
  holiday: holidayAt,
  weekdays: plural(WEEKDAYS),
  months: plural(MONTHS),
  seasons: plural(SEASONS),
  holidays: holidaysAt,
  part: (tokens, at) => {
    const word = tokens[at]?.word ?? "";
    return DAY_PARTS.has(word) ? { value: word, next: at + 1 } : undefined;
  },
};

const HEADS: ReadonlySet<string> = new Set([
  ...[
    MONTHS,
    WEEKDAYS,
    SEASONS,
    UNITS,
    UNIT_WORDS,
    TEEN_WORDS,
    TEN_WORDS,
    ORDINAL_WORDS,
    VAGUE_WORDS,
  ].flatMap((map) => [...map.keys()]),
  ...[...MONTHS.keys(), ...WEEKDAYS.keys(), ...SEASONS.keys()].map((name) => `${name}s`),
  ...DAY_PARTS,
  ...HOLIDAY_HEADS,
  ...["a", "an", "half", "oh", "o", "aught", "ought", "to", "too", "for", "fore", "ate"],
]);

/** Whether any slot can begin with a token; most words of a note can't. */
export const mayFillSlot = (token: Token | undefined): boolean =>
  token !== undefined &&
  (HEADS.has(token.word) || isAmong("hedges", token.word) || /^[\d½¼¾⅓⅔⅛⅜⅝⅞]/u.test(token.raw));
