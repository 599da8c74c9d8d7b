import { isAmong } from "./context.ts";
import type { Token } from "./tokens.ts";

type Tokens = readonly Token[];
type Stretch = { readonly at: number; readonly next: number };
const before = (tokens: Tokens, at: number): string =>
  tokens[at]?.gap === "stop" ? "" : (tokens[at - 1]?.word ?? "");
const after = (tokens: Tokens, next: number): string =>
  tokens[next]?.gap === "stop" ? "" : (tokens[next]?.raw ?? "");

const opensEntry = (tokens: Tokens, { at, next }: Stretch): boolean =>
  tokens[at]?.gap === "stop" && (/^[:\-–—]$/u.test(tokens[next]?.raw ?? "") || tokens[next]?.gap === "comma");

const DENOMINATORS = new Set([2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 64]);
/** "22/6 new battery": more than a month has, then a month, at the head of an entry. */
const headsEntry = (tokens: Tokens, { at }: Stretch): boolean => {
  const day = Number(tokens[at]?.raw);
  return tokens[at]?.gap === "stop" && day > 12 && day <= 31;
};

/** A proper fraction, a cable's gauge and cores ("12/2"), or "24/7". */
const couldBeSize = (tokens: Tokens, { at, next }: Stretch): boolean => {
  const [top = 0, bottom = 0] = tokens
    .slice(at, next)
    .flatMap(({ raw }) => (/^\d+$/u.test(raw) ? [Number(raw)] : []));
  return (top < bottom && DENOMINATORS.has(bottom)) || (top >= 8 && bottom < 8) || next - at > 3;
};

/** Whether numbers and a slash are a size, a share or a count: "3/8 bolt", "90 1/2", "1/4 turn". */
export const isSize = (tokens: Tokens, stretch: Stretch): boolean => {
  const { at, next } = stretch;
  if (tokens.slice(at, next).some(({ raw }) => /^\p{L}{3,}$/u.test(raw))) return false;
  if (isAmong("sizes", after(tokens, next)) || /^["#%°]$/u.test(after(tokens, next))) return true;
  return (
    !isAmong("dating", before(tokens, at)) &&
    !opensEntry(tokens, stretch) &&
    !headsEntry(tokens, stretch) &&
    couldBeSize(tokens, stretch)
  );
};

/** "number 2 may need a new one". */
export const isVerbMay = (tokens: Tokens, { at, next }: Stretch): boolean =>
  tokens.slice(at, next).at(-1)?.raw === "may" && isAmong("verbsAfterMay", after(tokens, next));

/** "$12 December 27": the number belongs to the money. */
export const isMoney = (tokens: Tokens, { at }: Stretch): boolean =>
  /^[$£€]$/u.test(tokens[at - 1]?.raw ?? "");
