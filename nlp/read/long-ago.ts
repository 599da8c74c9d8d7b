import type { Build } from "./build.ts";
import longAgo from "./long-ago.json" with { type: "json" };
import type { Made } from "./made.ts";

const PHRASES = longAgo.phrases.map((phrase) => phrase.split(" "));
const REACH = 2;

/** "Ages ago", "a while back": past, and nobody knows when. */
export const isLongAgo = ({ span, event }: Made, { scan, clauses }: Build): boolean => {
  const clause = event?.deeds.at(-1)?.clause ?? 0;
  const first = event?.deeds[0]?.clause ?? 0;
  const from = Math.min(span.from, clauses[first - 1]?.from ?? span.from);
  const to = clauses[clause + REACH - 1]?.to ?? span.to;
  const words = scan.tokens.slice(from, Math.max(to, clauses[clause]?.to ?? 0)).map((token) => token.norm);
  return PHRASES.some((phrase) =>
    words.some((_, at) => phrase.every((word, step) => words[at + step] === word)),
  );
};
