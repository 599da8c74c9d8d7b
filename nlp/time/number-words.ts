import { z } from "zod";
import data from "./number-words.json" with { type: "json" };

const values = z.record(z.string(), z.number());
const schema = z.object({
  units: values,
  teens: values,
  tens: values,
  ordinals: values,
  parts: values,
  signs: values,
  vague: z.record(z.string(), z.tuple([z.number(), z.number()])),
  beforeOne: z.array(z.string()),
});
const words = schema.parse(data);
const table = <T>(entries: Record<string, T>): ReadonlyMap<string, T> => new Map(Object.entries(entries));

export const UNIT_WORDS = table(words.units);
export const TEEN_WORDS = table(words.teens);
export const TEN_WORDS = table(words.tens);
export const ORDINAL_WORDS = table(words.ordinals);
/** What a whole is divided by: "eighths" is 8. */
export const PART_WORDS = table(words.parts);
export const FRACTION_SIGNS = table(words.signs);
/** Least and most that a vague word usually means. */
export const VAGUE_WORDS = table(words.vague);

/** Before "one" they make it what is spoken of, and no number. */
export const BEFORE_ONE: ReadonlySet<string> = new Set(words.beforeOne);
