import type { Build } from "./build.ts";
import type { Dated } from "./dates.ts";
import type { Made } from "./made.ts";
import { isPastPoint } from "./past-points.ts";
import sameTimes from "./same-times.json" with { type: "json" };
import type { Event } from "./told.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const STRONG = sameTimes.strong.map((phrase) => phrase.split(" "));
const WEAK = sameTimes.weak.map((phrase) => phrase.split(" "));
const DAY = /^\d{4}-\d{2}-\d{2}~?(?:\/|$)/;
const NEAR = 4;
const NOW = listed("datesNow");

const says = (words: readonly string[], phrases: readonly (readonly string[])[]): boolean =>
  phrases.some((phrase) => words.some((_, at) => phrase.every((word, step) => words[at + step] === word)));

/** The piece of work that another one is told along with. */
const partnerOf = (event: Event, earlier: readonly Made[]): Made | undefined => {
  const like = event.like?.event;
  return like === undefined
    ? earlier.findLast((other) => other.kind !== "todo")
    : earlier.find((other) => other.event === like);
};

/** Where what leads to a piece of work begins: a clause before it may say what else was going on. */
const start = ({ span }: Made, first: number, { clauses, index, deeds }: Build): number => {
  const at = Math.min(index[span.from] ?? first, first);
  const before = clauses[at - 1];
  const idle =
    before !== undefined && !startingIn(deeds, before.from, before.to).some((deed) => deed.status === "done");
  return (idle ? before : clauses[at])?.from ?? span.from;
};

/** "While I was up there I also sealed the vent": told as done along with what was told before it. */
export const sameTime = (each: Made, earlier: readonly Made[], build: Build): Dated | undefined => {
  const { scan, clauses, index, times, today } = build;
  const { event } = each;
  const [first, last] = [event?.deeds[0], event?.deeds.at(-1)];
  if (event === null || first === undefined || last === undefined) return undefined;
  const partner = partnerOf(event, earlier);
  if (partner === undefined) return undefined;
  const words = scan.tokens
    .slice(start(each, first.clause, build), clauses[last.clause]?.to ?? last.to)
    .map((token) => token.norm);
  if (words.some((word) => NOW.has(word))) return undefined;
  const strong = says(words, STRONG);
  const named = times.findLast(
    (time) => isPastPoint(time, today) && time.from < first.from && time.from > partner.span.to,
  );
  if (strong && event.like === null && named !== undefined)
    return { edtf: named.time.edtf, spans: [named], rule: "same-time" };
  const { dated } = partner;
  if (dated === undefined || dated.edtf === null || dated.rule === "just-now") return undefined;
  const near = first.clause - (partner.event?.deeds.at(-1)?.clause ?? index[partner.span.from] ?? 0) <= NEAR;
  const along = event.like !== null || strong || (near && DAY.test(dated.edtf) && says(words, WEAK));
  return along ? { ...dated, rule: "same-time" } : undefined;
};
