import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import { backAgain, troubleEnded, troubleGone } from "./gone.ts";
import { saidOfIt } from "./jobs.ts";
import type { Scan, Stretch } from "./scan.ts";
import data from "./shapes.json" with { type: "json" };
import { type Verdict, verdictBy } from "./verdicts.ts";
import { startingIn } from "./windows.ts";

const DENIALS = new Set(data.denials);
const UNSURE = new Set(data.unsure);
const LASTING = new Set(data.lasting);
const STRETCHES = new Set(data.stretches);
const WHOLE = new Set(data.whole);
const STEADY = new Set(data.steady);
const IT = new Set(data.it);
const SOFTENERS = new Set(data.softeners);

/** How many clauses after work a clause still speaks of how it went. */
const STILL_ABOUT = 5;

const wordsOf = (scan: Scan, { from, to }: Stretch): string[] =>
  scan.tokens.slice(from, to).map((token) => token.norm);

const goesOn = (words: readonly string[]): boolean =>
  words.some(
    (word, at) =>
      word === "since" ||
      (LASTING.has(word) && words.slice(at + 1, at + 3).some((next) => STRETCHES.has(next))) ||
      (WHOLE.has(word) && STRETCHES.has(words[at + 1] ?? "")),
  );

/** "The fridge has run off it every night": a state that has gone on, with nothing said against it. */
const hasLasted = (scan: Scan, clause: Clause): Verdict | undefined => {
  const words = wordsOf(scan, clause);
  const head = words.find((word) => word !== "and" && word !== "so") ?? "";
  const against = (word: string): boolean => DENIALS.has(word) || SOFTENERS.has(word) || UNSURE.has(word);
  if (!IT.has(head) || !words.some((word) => STEADY.has(word)) || words.some(against)) return undefined;
  const next = wordsOf(scan, { from: clause.to, to: clause.to + 2 });
  return goesOn([...words, ...(next[0] === "since" ? next : [])])
    ? verdictBy(clause, "holding", "goes-on")
    : undefined;
};

/** Clauses in which a deed was done, or that follow one closely. */
const afterWork = (deeds: readonly Deed[]): ((clause: number) => boolean) => {
  const worked = new Set(
    deeds.filter((deed) => deed.status === "done" && deed.sense !== "look").map((deed) => deed.clause),
  );
  return (clause) => {
    for (let at = clause - 1; at >= Math.max(0, clause - STILL_ABOUT); at--) if (worked.has(at)) return true;
    return false;
  };
};

/** Verdicts told by the shape of what follows a piece of work. */
export const shapedVerdicts = (
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
  deeds: readonly Deed[],
): Verdict[] => {
  const follows = afterWork(deeds);
  const lastDone = new Map(
    deeds
      .filter((deed) => deed.status === "done" && deed.sense !== "look")
      .map((deed) => [deed.clause, deed.at]),
  );
  const active = new Set(deeds.filter((deed) => deed.status !== "talk").map((deed) => deed.clause));
  const told = (clause: Clause): boolean => active.has(index[clause.from] ?? -1);
  return clauses.flatMap((clause, at) => {
    const deed = lastDone.get(at);
    if (deed !== undefined && startingIn(scan.verdicts, deed, clause.to).length === 0)
      return (
        troubleGone(scan, { from: deed + 1, to: clause.to }) ??
        troubleEnded(scan, { from: deed + 1, to: clause.to }) ??
        []
      );
    if (!follows(at) || startingIn(scan.verdicts, clause.from, clause.to).length > 0) return [];
    const gone = troubleGone(scan, clause) ?? troubleEnded(scan, clause);
    if (gone !== undefined) return [gone];
    const back = told(clause) ? undefined : backAgain(scan, clause);
    if (back !== undefined) return [back];
    if (startingIn(scan.faults, clause.from, clause.to).length > 0) return [];
    const lasted = hasLasted(scan, clause);
    if (lasted !== undefined) return [lasted];
    return told(clause) ? [] : (saidOfIt(scan, clause) ?? []);
  });
};
