/** One word, number or mark of the text; `start` and `end` are offsets into the original text. */
export type Token = {
  readonly text: string;
  /** Lower case, accents and apostrophes gone, spelling repaired. */
  readonly norm: string;
  /** `norm` without a plural ending. */
  readonly stem: string;
  readonly start: number;
  readonly end: number;
  readonly kind: "word" | "number" | "mark";
};

const PIECE =
  /\d+(?=x(?![\p{L}\p{N}]))|\d+(?:[.,]\d+)*(?=(?:kms?|mi|mls|miles?|nts|nights?)(?![\p{L}\p{N}]))|\d+(?:[.,]\d+)*(?![\p{L}\p{N}])|[\p{L}\p{N}]+(?:['’`][\p{L}]+)*|[^\s\p{L}\p{N}]/gu;
const NUMBER = /^\d+(?:[.,]\d+)*$/;
const WORD = /[\p{L}\p{N}]/u;

/** Words in -s that are no plurals. */
const SINGULARS = new Set(["lens", "chassis", "canvas", "pliers", "series", "always", "perhaps", "gasses"]);

/** Singular of a regular plural: "boxes" gives "box", "lug nuts" is two tokens. */
export const singular = (word: string): string => {
  if (SINGULARS.has(word)) return word;
  if (word.length < 4 || !word.endsWith("s") || /(?:ss|us|is)$/.test(word)) return word;
  if (/(?:xes|ches|shes|sses)$/.test(word)) return word.slice(0, -2);
  if (word.endsWith("ies") && word.length > 5) return `${word.slice(0, -3)}y`;
  return word.slice(0, -1);
};

export const plain = (word: string): string =>
  word
    .toLowerCase()
    .normalize("NFD")
    .replace(/[\u0300-\u036f'’`]/g, "");

const kindOf = (text: string): Token["kind"] =>
  NUMBER.test(text) ? "number" : WORD.test(text) ? "word" : "mark";

/** Splits a text into tokens without repairing any spelling. */
export const split = (text: string): Token[] =>
  [...text.matchAll(PIECE)].map((match) => {
    const norm = plain(match[0]);
    const start = match.index;
    const end = start + match[0].length;
    return { text: match[0], norm, stem: singular(norm), start, end, kind: kindOf(match[0]) };
  });
