import type { Clause } from "./clauses.ts";
import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import {
  AUXILIARIES,
  BREAKERS,
  DETERMINERS,
  listed,
  PREPOSITIONS,
  SUBJECTS,
  SUBORDINATORS,
} from "./words.ts";

const JOINS = listed("troubleJoins");
/** What is told before one of these is another thing. */
const LEADS: ReadonlySet<string> = new Set([...BREAKERS, ...SUBORDINATORS, ...JOINS, "that", "this", "er"]);
/** As far before trouble as what it befalls is looked for. */
const FAR = 7;
/** As many words of a thing behind a verb: "lost its spring", "a foot from the end". */
const OF_THING = 4;
const ENDS: ReadonlySet<string> = new Set([...JOINS, ...listed("troubleEnds")]);
const OPENS_THING = listed("troubleOpensThing");

const isMark = ({ tokens }: Scan, at: number): boolean => {
  const token = tokens[at];
  return token === undefined || (token.kind === "mark" && token.norm !== "-");
};

/** Words that leave a thing unsaid at the end; "snapped off" leaves none. */
const isLoose = (scan: Scan, at: number): boolean => {
  const word = wordAt(scan, at);
  return DETERMINERS.has(word) || HANGING.has(word) || AUXILIARIES.has(word) || ENDS.has(word);
};
const HANGING = listed("troubleHanging");

/** "Up and down", "on and off": one way of doing, and not two. */
const GO_TOGETHER: ReadonlySet<string> = new Set(["up down", "on off", "back forth", "in out", "over over"]);
const isOneWay = (scan: Scan, at: number): boolean =>
  wordAt(scan, at) === "and" && GO_TOGETHER.has(`${wordAt(scan, at - 1)} ${wordAt(scan, at + 1)}`);

/** "Like a wasp" ends what is told, but not of what it smells. */
const isLikened = (scan: Scan, at: number): boolean =>
  wordAt(scan, at) === "like" && SEEMS.test(wordAt(scan, at - 1));

const endsAt = (scan: Scan, at: number): boolean =>
  isMark(scan, at) || (ENDS.has(wordAt(scan, at)) && !isLikened(scan, at) && !isOneWay(scan, at));
const SEEMS = /^(?:smell|sound|look|feel|taste)/;

/** Where the nearest thing before is named, or its sentence begins; the head of the clause if that is near. */
const nameBefore = (scan: Scan, clause: Clause, from: number): number => {
  let start = from - clause.from <= FAR ? clause.from : from;
  const least = clause.hard ? clause.from : Math.max(0, from - FAR);
  while (start > least && !opens(scan, start) && !endsAt(scan, start - 1)) start--;
  return start;
};

const startOf = (scan: Scan, clause: Clause, from: number): number => {
  let start = nameBefore(scan, clause, from);
  for (let at = start; at <= from; at++) if (JOINED.has(wordAt(scan, at)) || isMark(scan, at)) start = at + 1;
  while (LEADS.has(wordAt(scan, start)) || HANGING.has(wordAt(scan, start)) || isMark(scan, start)) start++;
  return Math.min(start, from + LEADING);
};
const JOINED: ReadonlySet<string> = new Set([...BREAKERS, ...JOINS, "before", "after"]);
const LEADING = 3;

/** "The blind", not "at the window": where what is befallen begins to be named. */
const opens = (scan: Scan, at: number): boolean =>
  (DETERMINERS.has(wordAt(scan, at)) && !PREPOSITIONS.has(wordAt(scan, at - 1))) ||
  SUBJECTS.has(wordAt(scan, at));

const endOf = (scan: Scan, from: number, to: number): number => {
  const least = Math.max(from + 1, to - OF_THING + 1);
  for (let at = least; at < to; at++) if (endsAt(scan, at)) return at;
  const next = wordAt(scan, to);
  if (isOneWay(scan, to)) return to + 2;
  if (!isLoose(scan, to - 1) && !OPENS_THING.has(next) && !OF_PLACE.has(next)) return to;
  let end = to;
  while (end < to + OF_THING && !endsAt(scan, end)) {
    if (isAnother(scan, end)) break;
    end++;
    const isWhole = !isLoose(scan, end - 1) && !PREPOSITIONS.has(wordAt(scan, end - 1));
    if (isWhole && (isLoose(scan, end) || PREPOSITIONS.has(wordAt(scan, end)) || isMark(scan, end))) break;
  }
  return end;
};

/** "Its spring | it comes" */
const isAnother = (scan: Scan, at: number): boolean =>
  SUBJECTS.has(wordAt(scan, at)) &&
  !OPENS_THING.has(wordAt(scan, at)) &&
  !PREPOSITIONS.has(wordAt(scan, at - 1));

const OF_PLACE: ReadonlySet<string> = new Set("of from".split(" "));

/**
 * The words that tell of trouble, out of those around it: from where what it befalls is named to where the next thing is
 * told, and nothing left hanging ("the blind over the bunks has lost its spring").
 */
export const troubleWords = (scan: Scan, clauses: readonly Clause[], { from, to }: Stretch): Stretch => {
  const clause = clauses.findLast((each) => each.from <= from) ?? {
    from,
    to,
    hard: true,
    subordinate: false,
  };
  const start = startOf(scan, clause, from);
  let end = endOf(scan, Math.max(start, from), to);
  while (end > start + 1 && isLoose(scan, end - 1)) end--;
  return end > start ? { from: start, to: end } : { from, to };
};
