import type { Build } from "./build.ts";
import longAgo from "./long-ago.json" with { type: "json" };
import type { Made } from "./made.ts";
import { startingIn } from "./windows.ts";

const PHRASES = longAgo.phrases.map((phrase) => phrase.split(" "));
const NUMBER = "#";

/** "Ages ago", "a while back", "when I was forty", said with the work or right beside it: past, and nobody knows when. */
export const isLongAgo = ({ event }: Made, { scan, clauses }: Build): boolean => {
  const [first, last] = [event?.deeds[0]?.clause, event?.deeds.at(-1)?.clause];
  if (first === undefined || last === undefined) return false;
  const from = (clauses[first - 1] ?? clauses[first])?.from ?? 0;
  const to = (clauses[last + 1] ?? clauses[last])?.to ?? 0;
  const counted = new Set(startingIn(scan.numbers, from, to).map((number) => number.from));
  const fits = (word: string, at: number): boolean =>
    word === NUMBER ? counted.has(at) : scan.tokens[at]?.norm === word;
  return scan.tokens
    .slice(from, to)
    .some((_, at) => PHRASES.some((phrase) => phrase.every((word, step) => fits(word, from + at + step))));
};
