import { z } from "zod";
import data from "./context.json" with { type: "json" };

const schema = z
  .object({ about: z.string() })
  .catchall(z.strictObject({ why: z.string(), words: z.array(z.string()) }));

/** Lists of words that stand beside a word of time, by what they make of it. */
export type ContextList = Exclude<keyof typeof data, "about">;

const sets = new Map(
  Object.entries(schema.parse(data)).map(([name, list]) => [
    name,
    new Set(typeof list === "string" ? [] : list.words),
  ]),
);

/** Whether a word is in one of the lists. */
export const isAmong = (list: ContextList, word: string): boolean => sets.get(list)?.has(word) === true;
