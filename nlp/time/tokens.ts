import { canonicalWord } from "./lexicon.ts";

/** What lies between a token and the one before it. */
export type Gap = "none" | "space" | "comma" | "stop";

export type Token = {
  readonly start: number;
  readonly end: number;
  /** As written, lower case, apostrophes removed. */
  readonly raw: string;
  /** The usual spelling of the word: "yest" is "yesterday". */
  readonly word: string;
  /** A capital and small letters after it. */
  readonly capital: boolean;
  readonly gap: Gap;
};

const PIECE = /\d+(?:[.,]\d+)*|[½¼¾⅓⅔⅛⅜⅝⅞]|\p{L}+(?:['’]\p{L}+)*|['’]\d{2}(?!\d)|[-–—/$£€#°"%:+&]/gu;
const ABBREVIATIONS =
  /^(?:jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec|mon|tues?|weds?|thu|thurs?|fri|sat|sun|wks?|mos?|yrs?|hrs?|mins?|approx|abt|st|dr)$/;
/** Written together with digits or slashes, and split wrongly by the pieces above. */
const JOINED = /\b(?:2(?:day|dy|nite|night|moro|morrow)|b4|w\/e)\b/giu;

/** "Monday's", "last week's": the time itself. */
const POSSESSIVE =
  /^((?:mon|tues|wednes|thurs|fri|satur|sun|yester|to)day|january|february|march|april|may|june|july|august|(?:septem|octo|novem|decem)ber|week|month|year|spring|summer|autumn|fall|winter|tonight)['’]s$/u;

const gapBefore = (between: string, previous: string): Gap => {
  if (between === "") return "none";
  if (/[;!?\n]/u.test(between)) return "stop";
  if (between.includes("."))
    return ABBREVIATIONS.test(previous) && /^\.[ ,]*$/u.test(between) ? "space" : "stop";
  return /[,()[\]{}]/u.test(between) ? "comma" : "space";
};

const tokenOf = (text: string, start: number, end: number, previous: Token | undefined): Token => {
  const written = text.slice(start, end);
  const raw = written.toLowerCase().replace(POSSESSIVE, "$1").replace(/['’]/gu, "").replace("&", "and");
  return {
    start,
    end,
    raw,
    word: canonicalWord(raw),
    capital: /^\p{Lu}\p{Ll}/u.test(written),
    gap: previous === undefined ? "stop" : gapBefore(text.slice(previous.end, start), previous.raw),
  };
};

const joined = (text: string): Map<number, number> =>
  new Map([...text.matchAll(JOINED)].map((match) => [match.index, match.index + match[0].length]));

/** The words, numbers and signs of a text with their offsets. */
export const tokenize = (text: string): readonly Token[] => {
  const tokens: Token[] = [];
  const whole = joined(text);
  let covered = 0;
  for (const match of text.matchAll(PIECE)) {
    if (match.index < covered) continue;
    const end = whole.get(match.index) ?? match.index + match[0].length;
    tokens.push(tokenOf(text, match.index, end, tokens.at(-1)));
    covered = end;
  }
  return tokens;
};
