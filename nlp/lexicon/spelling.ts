import data from "./data/spellings.json" with { type: "json" };
import { plain, singular, split, type Token } from "./tokens.ts";

const SHORT: ReadonlyMap<string, string> = new Map(Object.entries(data.words));
type Heard = { readonly word: string; readonly meant: string; readonly near: readonly string[] };
const HEARD: ReadonlyMap<string, Heard> = new Map(data.heard.pairs.map((pair) => [pair.word, pair]));
const NEAR_TOKENS = 5;
/** English endings: a slip rarely leaves them whole, so a word with one is mostly another word. */
const WELL_FORMED =
  /(?:tion|sion|ment|ness|ity|able|ible|ance|ence|ive|ous|ful|less|ship|ward|wards|ism|ist|ally|ture)s?$/;
/** Bounds the work on a text of nonsense. */
const MOST_REPAIRS = 300;

/** Edits between two words, adjacent letters swapped counting once; stops above `most`. */
const distance = (a: string, b: string, most: number): number => {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min((above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (above[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, (before[j - 2] ?? 0) + 1);
      row.push(cost);
    }
    if (Math.min(...row) > most) return most + 1;
    before = above;
    above = row;
  }
  return above[b.length] ?? most + 1;
};

const skeleton = (word: string): string => (word[0] ?? "") + word.slice(1).replace(/[aeiou]/g, "");
/** "replcd" is "replaced" with vowels left out. */
const dropsVowels = (short: string, full: string): boolean =>
  full.length - short.length <= 4 &&
  (short.length >= 5 || !/[aeiou]/.test(short)) &&
  short.length >= 4 &&
  skeleton(short) === skeleton(full) &&
  short.length < full.length;

/** Knows the words of the trade and repairs near misses of them. */
export class Speller {
  readonly #known: ReadonlySet<string>;
  readonly #common: (word: string) => boolean;
  readonly #byFirst = new Map<string, string[]>();

  constructor(
    tradeWords: Iterable<string>,
    common: (word: string) => boolean,
    isMeant: (word: string) => boolean = () => true,
  ) {
    this.#known = new Set(tradeWords);
    this.#common = common;
    for (const word of this.#known)
      if (word.length >= 5 && isMeant(word))
        this.#byFirst.set(word[0] ?? "", [...(this.#byFirst.get(word[0] ?? "") ?? []), word]);
  }

  /** "beading" is a form of a word that is known. */
  #isForm(word: string): boolean {
    const base = /^(.{3,}?)(?:ing|ed|er|ers|y|ly|s|es)$/.exec(word)?.[1];
    if (base === undefined) return false;
    const undoubled = base.at(-1) === base.at(-2) ? base.slice(0, -1) : base;
    return [base, `${base}e`, undoubled].some((each) => this.#known.has(each) || this.#common(each));
  }

  knows(word: string): boolean {
    return this.#known.has(word) || this.#known.has(singular(word)) || this.#common(word);
  }

  /** "checkd", "snapd": the past of a verb without its "e". */
  #past(word: string): string | undefined {
    const stem = /^(.{2,}[^aeiou])d$/.exec(word)?.[1];
    if (stem === undefined) return undefined;
    return [`${stem}ed`, `${stem}${stem.at(-1) ?? ""}ed`].find((each) => this.knows(each));
  }

  /** The trade word nearest to an unknown one, or the word itself. */
  repair(word: string): string {
    if (word.length < 4 || word.length > 24 || /\d/.test(word) || this.knows(word) || this.#isForm(word))
      return word;
    if (word.endsWith("in") && this.knows(`${word}g`)) return `${word}g`;
    const past = this.#past(word);
    if (past !== undefined) return past;
    const candidates = this.#byFirst.get(word[0] ?? "") ?? [];
    const most = word.length >= 8 && !WELL_FORMED.test(word) ? 2 : 1;
    let best: string | undefined;
    let bestDistance = most + 1;
    for (const candidate of candidates) {
      if (dropsVowels(word, candidate)) return candidate;
      if (word.length < 6) continue;
      const edits = distance(word, candidate, most);
      if (edits < bestDistance) [best, bestDistance] = [candidate, edits];
    }
    return best ?? word;
  }
}

/** A word written out: a phone spelling, or the trade word nearest to a slip; else the word itself. */
export const written = (word: string, speller: Speller): string => SHORT.get(word) ?? speller.repair(word);

const withNorm = (token: Token, norm: string): Token => ({ ...token, norm, stem: singular(norm) });

const hearAgain = (tokens: readonly Token[], at: number): string | undefined => {
  const heard = HEARD.get(tokens[at]?.norm ?? "");
  if (heard === undefined) return undefined;
  if (heard.near.length === 0) return heard.meant;
  const around = tokens.slice(Math.max(0, at - NEAR_TOKENS), at + NEAR_TOKENS + 1);
  return around.some((token) => heard.near.includes(token.norm) || heard.near.includes(token.stem))
    ? heard.meant
    : undefined;
};

/** "re hung" and "re-hung" are one word. */
const joinRe = (tokens: readonly Token[], knows: (word: string) => boolean): Token[] => {
  const out: Token[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at];
    if (token === undefined) continue;
    const next = tokens[at + 1]?.norm === "-" ? at + 2 : at + 1;
    const follower = tokens[next];
    const whole = follower === undefined ? "" : `re${follower.norm}`;
    if (token.norm === "re" && follower !== undefined && knows(whole)) {
      out.push({ ...withNorm(token, whole), text: token.text + follower.text, end: follower.end });
      at = next;
    } else out.push(token);
  }
  return out;
};

const SHORT_WITH_SLASH: ReadonlyMap<string, string> = new Map([
  ["w", "with"],
  ["b", "because"],
]);
const MARKS: ReadonlyMap<string, string> = new Map([
  ["&", "and"],
  ["+", "and"],
]);

/** "u-bolts" is no "you". */
const isBolt = (raw: readonly Token[], at: number): boolean =>
  (raw[at + 1]?.norm === "-" ? raw[at + 2] : raw[at + 1])?.stem === "bolt";

/** The tokens of a text with phone spellings, mishearings and typing slips of trade words repaired. */
export const tokenize = (text: string, speller: Speller): Token[] => {
  const raw = split(text);
  const memo = new Map<string, string>();
  const repaired = (word: string): string => {
    const known = memo.get(word);
    if (known !== undefined) return known;
    const mayRepair = memo.size < MOST_REPAIRS || speller.knows(word);
    const value = mayRepair ? written(word, speller) : (SHORT.get(word) ?? word);
    memo.set(word, value);
    return value;
  };
  const spelled = raw.map((token, at) => {
    if (token.kind === "number") return token;
    if (token.kind === "mark") {
      const word = MARKS.get(token.norm);
      return word === undefined ? token : { ...withNorm(token, word), kind: "word" as const };
    }
    if (token.norm === "u" && isBolt(raw, at)) return token;
    if (SHORT_WITH_SLASH.has(token.norm) && raw[at + 1]?.norm === "/")
      return withNorm(token, SHORT_WITH_SLASH.get(token.norm) ?? token.norm);
    return withNorm(token, hearAgain(raw, at) ?? repaired(plain(token.text)));
  });
  return joinRe(spelled, (word) => speller.knows(word));
};
