import { z } from "zod";
import data from "./not-dates.json" with { type: "json" };
import type { Token } from "./tokens.ts";

const words = z
  .object({
    about: z.string(),
    "size-words": z.array(z.string()),
    "date-words": z.array(z.string()),
    "verb-after-may": z.array(z.string()),
  })
  .parse(data);
const SIZE_WORDS = new Set(words["size-words"]);
const DATE_WORDS = new Set(words["date-words"]);
const VERBS = new Set(words["verb-after-may"]);

type Tokens = readonly Token[];
type Stretch = { readonly at: number; readonly next: number };
const before = (tokens: Tokens, at: number): string =>
  tokens[at]?.gap === "stop" ? "" : (tokens[at - 1]?.word ?? "");
const after = (tokens: Tokens, next: number): string =>
  tokens[next]?.gap === "stop" ? "" : (tokens[next]?.raw ?? "");

const opensEntry = (tokens: Tokens, { at, next }: Stretch): boolean =>
  tokens[at]?.gap === "stop" && (/^[:\-–—]$/u.test(tokens[next]?.raw ?? "") || tokens[next]?.gap === "comma");

/** Whether two numbers and a slash are a size, a share or a count: "3/8 bolt", "90 1/2", "1/4 turn". */
export const isSize = (tokens: Tokens, stretch: Stretch): boolean => {
  const { at, next } = stretch;
  const inside = tokens.slice(at, next);
  if (inside.some(({ raw }) => /^\p{L}{3,}$/u.test(raw))) return false;
  if (SIZE_WORDS.has(after(tokens, next)) || /^["#%°]$/u.test(after(tokens, next))) return true;
  return !DATE_WORDS.has(before(tokens, at)) && !opensEntry(tokens, stretch);
};

/** "number 2 may need a new one". */
export const isVerbMay = (tokens: Tokens, { at, next }: Stretch): boolean =>
  tokens.slice(at, next).at(-1)?.raw === "may" && VERBS.has(after(tokens, next));
