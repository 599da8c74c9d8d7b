import type { VerdictEntry } from "../lexicon/lexicon.ts";
import type { Hit } from "../lexicon/pattern.ts";
import type { Clause } from "./clauses.ts";
import type { Made } from "./made.ts";
import { judge } from "./outcome.ts";
import type { Scan } from "./scan.ts";
import { startingIn } from "./windows.ts";

type Verdict = Hit<VerdictEntry>;

/** How far after the work, in words, a verdict that nothing else claims still speaks of it. */
const REACH = 30;

const lastDeedOf = (made: Made): number => Math.max(0, ...(made.event?.deeds ?? []).map((deed) => deed.at));

const waits = (made: Made): boolean => made.kind === "repair" && made.judged?.rule === "nothing-said";

/** A thing named only to say that the work before it did its job: "put a battery in and the fridge has run off it since". */
const onlyShows = (
  made: Made,
  before: Made | undefined,
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
): boolean => {
  if (before === undefined || !waits(before) || made.event !== null || made.kind !== "check") return false;
  const first = made.told.topic.mentions[0]?.from ?? made.span.from;
  const clause = clauses[index[first] ?? 0];
  const opener = scan.tokens[clause?.from ?? 0]?.norm ?? "";
  return clause !== undefined && !clause.hard && opener === "and" && first - lastDeedOf(before) < REACH;
};

/** Use since the work with nothing said against it: "five trips on it now". */
const usedSince = (made: Made): Made =>
  made.exposure.length === 0
    ? made
    : {
        ...made,
        judged: { outcome: "holding", spans: made.exposure.map((each) => each.at), rule: "used-since" },
      };

const withVerdicts = (made: Made, next: number, verdicts: readonly Verdict[]): Made => {
  if (!waits(made)) return made;
  const deed = lastDeedOf(made);
  const found = startingIn(verdicts, deed + 1, Math.min(next, deed + REACH));
  if (found.length === 0) return usedSince(made);
  const judged = judge(found, [], []);
  return { ...made, judged: { ...judged, rule: `near-by:${judged.rule}` } };
};

/**
 * Gives verdicts that no record claims to the work that they follow; `made` in the order of the note,
 * `verdicts` those that hold.
 */
export const withLostVerdicts = (
  made: readonly Made[],
  verdicts: readonly Verdict[],
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
): Made[] => {
  const kept = made.filter((each, at) => !onlyShows(each, made[at - 1], scan, clauses, index));
  return kept.map((each, at) => withVerdicts(each, kept[at + 1]?.span.from ?? scan.tokens.length, verdicts));
};
