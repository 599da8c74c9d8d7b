import { isAmong } from "./context.ts";
import type { Found } from "./find.ts";
import { either } from "./meaning.ts";
import { yearOf } from "./period.ts";
import type { Reference } from "./reference.ts";
import { wordAfter, wordBefore } from "./rule.ts";
import { SLOTS } from "./slots.ts";
import type { Token } from "./tokens.ts";

/** As many years may pass without a word. */
const PASSED = 2;

const shortYearAt = (
  tokens: readonly Token[],
  at: number,
  before: number,
  reference: Reference,
): Found | undefined => {
  const read = SLOTS.loose(tokens, at, reference);
  if (read === undefined) return undefined;
  const { value, next } = read;
  const isNext = value > before && value <= Math.min(before + PASSED, reference.today.year);
  const place = { tokens, at, next, before: undefined };
  const led =
    tokens[at]?.gap === "stop" || tokens[at]?.gap === "comma" || isAmong("turnLeads", wordBefore(place));
  const meaning = either(yearOf(value), 0.55);
  return isNext && led && isAmong("turnFollows", wordAfter(place)) && meaning !== undefined
    ? { at, next, rule: "year-in-turn", order: 0, namesYear: true, meaning }
    : undefined;
};

/** "In twenty twenty two it leaked, twenty three I was broke": with the short years whose turn it is after those told before. */
export const withYearsInTurn = (
  tokens: readonly Token[],
  found: readonly Found[],
  reference: Reference,
): readonly Found[] => {
  const out: Found[] = [];
  let told: number | undefined;
  for (const [nth, one] of found.entries()) {
    out.push(one);
    if (one.namesYear) told = one.meaning.period.last.year;
    const until = found[nth + 1]?.at ?? tokens.length;
    for (let at = one.next; told !== undefined && at < until; at++) {
      const year = shortYearAt(tokens, at, told, reference);
      if (year === undefined || year.next > until) continue;
      out.push(year);
      told = year.meaning.period.from.year;
      at = year.next - 1;
    }
  }
  return out;
};
