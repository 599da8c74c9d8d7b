import { z } from "zod";
import data from "./lexicon.json" with { type: "json" };

export const TIME_UNITS = ["minute", "hour", "day", "week", "fortnight", "month", "year"] as const;
export type TimeUnit = (typeof TIME_UNITS)[number];

const names = z.record(z.string(), z.number().int());
const schema = z.object({
  months: names,
  weekdays: names,
  seasons: names,
  units: z.record(z.string(), z.enum(TIME_UNITS)),
  parts: z.array(z.string()),
  variants: z.record(z.string(), z.string()),
  fuzzy: z.array(z.string().min(6)),
  "not-fuzzy": z.array(z.string()),
  ambiguous: z.array(z.string()),
});
const lexicon = schema.parse(data);

const table = <T>(entries: Record<string, T>): ReadonlyMap<string, T> => new Map(Object.entries(entries));

/** 1 is January. */
export const MONTHS = table(lexicon.months);
/** ISO: 1 is Monday. */
export const WEEKDAYS = table(lexicon.weekdays);
/** EDTF season codes, 21 is spring. */
export const SEASONS = table(lexicon.seasons);
export const UNITS = table(lexicon.units);
export const DAY_PARTS: ReadonlySet<string> = new Set(lexicon.parts);
const VARIANTS = table(lexicon.variants);
const NOT_FUZZY = new Set(lexicon["not-fuzzy"]);
const AMBIGUOUS = new Set(lexicon.ambiguous);
const KNOWN = new Set([
  ...[MONTHS, WEEKDAYS, SEASONS, UNITS].flatMap((map) => [...map.keys()]),
  ...DAY_PARTS,
  ...lexicon.fuzzy,
]);

/** Written so that it may well be another word: "sat", "may", "spring". */
export const isAmbiguous = (raw: string): boolean => AMBIGUOUS.has(raw);

/** One letter wrong, missing, too many, or two neighbours swapped. */
const oneSlip = (a: string, b: string): boolean => {
  if (a.length > b.length) return oneSlip(b, a);
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  const [x, y] = [a.slice(i), b.slice(i)];
  if (a.length + 1 === b.length) return x === y.slice(1);
  return x.slice(1) === y.slice(1) || (x[0] === y[1] && x[1] === y[0] && x.slice(2) === y.slice(2));
};

const misspelt = (raw: string): string | undefined => {
  if (raw.length < 5 || NOT_FUZZY.has(raw)) return undefined;
  return lexicon.fuzzy.find(
    (word) => word[0] === raw[0] && Math.abs(word.length - raw.length) < 2 && oneSlip(raw, word),
  );
};

/** The usual spelling of an abbreviated or mistyped word of time; other words as they are. Lower case in and out. */
export const canonicalWord = (raw: string): string =>
  VARIANTS.get(raw) ?? (KNOWN.has(raw) ? raw : (misspelt(raw) ?? raw));
