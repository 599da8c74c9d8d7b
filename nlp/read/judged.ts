import type { Build } from "./build.ts";
import { type Judged, judge } from "./outcome.ts";
import type { Stretch } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

const PAST_STATE = listed("recordsPastState");
const NOW_AGAIN = new Set(["again", "still", "now", "already"]);

/** A fault told after a deed that tells how it went on, not why it was done. */
const tellsOutcome = (
  fault: Told["faults"][number],
  deedClause: number,
  { scan, clauses, index }: Build,
): boolean => {
  const at = index[fault.from] ?? 0;
  const clause = clauses[at];
  if (clause === undefined || fault.value < 2 || at === deedClause) return false;
  const words = scan.tokens.slice(clause.from, Math.min(clause.to, fault.to + 2)).map((token) => token.norm);
  return words.some((word) => NOW_AGAIN.has(word)) || !words.some((word) => PAST_STATE.has(word));
};

const CONTRASTS = listed("recordsContrasts");
/** Told against the good verdict before it: "keeps the rain out but it whistles". */
const contrasts = (fault: Stretch, { scan, clauses, index }: Build): boolean => {
  const from = clauses[index[fault.from] ?? 0]?.from ?? 0;
  const words = scan.tokens.slice(from, from + 2).map((token) => token.norm);
  return CONTRASTS.has(words[0] ?? "") || (words[0] === "and" && CONTRASTS.has(words[1] ?? ""));
};

/** The verdict on one piece of work, from its own words and, when they give none, from those said early. */
export const judged = (told: Told, event: Event, early: Told["verdicts"], build: Build): Judged => {
  if (event.action === "remove") return { outcome: "untested", spans: [], rule: "removed" };
  const work = event.deeds.filter((deed) => deed.sense !== "prep");
  const after = Math.min(...(work.length > 0 ? work : event.deeds).map((deed) => deed.at));
  const last = event.deeds.at(-1);
  const verdicts = startingIn(told.verdicts, after + 1, event.to);
  const faults = startingIn(told.faults, last?.at ?? 0, event.to).filter(
    (fault) =>
      fault.from > (last?.at ?? 0) && fault.from < event.to && tellsOutcome(fault, last?.clause ?? -1, build),
  );
  const result = judge(
    verdicts,
    faults,
    faults.filter((fault) => contrasts(fault, build)),
  );
  return result.outcome === "untested" && result.spans.length === 0 && early.length > 0
    ? judge(early, [], [])
    : result;
};
