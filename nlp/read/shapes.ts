import type { Outcome } from "../../shared/vocabulary.ts";
import type { VerdictEntry } from "../lexicon/lexicon.ts";
import { isPlainVerb } from "../lexicon/lexicon.ts";
import type { Hit } from "../lexicon/pattern.ts";
import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import type { Scan, Stretch } from "./scan.ts";
import data from "./shapes.json" with { type: "json" };
import { startingIn } from "./windows.ts";
import { listed } from "./words.ts";

type Verdict = Hit<VerdictEntry>;

const DENIALS = new Set(data.denials);
const UNSURE = new Set(data.unsure);
const LASTING = new Set(data.lasting);
const STRETCHES = new Set(data.stretches);
const WHOLE = new Set(data.whole);
const STEADY = new Set(data.steady);
const IT = new Set(data.it);
const SUPPOSED = new Set(data.supposed);
const SOFTENERS = new Set(data.softeners);

const FILLERS = new Set(data.fillers);
const PRONOUNS = new Set(data.pronouns);
const JOINED = new Set(data.joined);
const NOT_JOBS = new Set(data.notJobs);
const CAME = new Set(data.came);
const ABLE = new Set(data.able);
const USERS = new Set(data.usersOf);
/** Words that put an end to a state. */
const ENDS = listed("shapesEnds");

const FIT = new Set(data.fit);
const COPULAS = new Set(data.copulas);
const US = new Set(["i", "we", "im", "ive", "weve", "you"]);
/** Most words of a clause that is a state and nothing else. */
const ALONE = 4;

/** How far a denial reaches, in words. */
const REACH = 5;
/** How many clauses after work a clause still speaks of how it went. */
const STILL_ABOUT = 5;

const verdict = (stretch: Stretch, outcome: Outcome, source: string): Verdict => ({
  from: stretch.from,
  to: stretch.to,
  value: { outcome },
  source,
  verb: null,
});

const wordsOf = (scan: Scan, { from, to }: Stretch): string[] =>
  scan.tokens.slice(from, to).map((token) => token.norm);

/** "No flap on the test drive", "the lights don't dim any more": trouble that is denied. */
const troubleGone = (scan: Scan, clause: Stretch): Verdict | undefined => {
  const faults = startingIn(scan.faults, clause.from, clause.to);
  for (const fault of faults) {
    const reach = { from: Math.max(clause.from, fault.from - REACH), to: fault.from };
    const words = wordsOf(scan, reach);
    const at = words.findIndex((word) => DENIALS.has(word));
    if (at < 0 || words.slice(at + 1).some((word) => UNSURE.has(word))) continue;
    return verdict({ from: reach.from + at, to: fault.to }, "holding", "trouble-denied");
  }
  return undefined;
};

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
    ? verdict(clause, "holding", "goes-on")
    : undefined;
};

const isJob = (word: string): boolean => isPlainVerb(word) && !NOT_JOBS.has(word);

/** "It clicks", "she's charging", "they've kept", "it lit": the thing is told to do its job. */
const doesItsJob = (words: readonly string[]): boolean => {
  const [head = "", first = "", second = ""] = words;
  if (JOINED.has(head)) return /(?:ing|ed|wn|pt)$/.test(first) && isJob(first);
  if (USERS.has(head)) return ABLE.has(first) && isPlainVerb(second) && !UNSURE.has(second);
  if (!PRONOUNS.has(head)) return false;
  if (first === "has" || first === "have") return isJob(second) || second === "been";
  return CAME.has(first) || (first.endsWith("s") && isJob(first));
};

/** "Runs cool", "the drawer slides easy now": a state of a thing in order, tied to it or alone. */
const isFit = (words: readonly string[]): boolean =>
  words.some(
    (word, at) =>
      FIT.has(word) &&
      (words.slice(Math.max(0, at - 2), at).some((before) => COPULAS.has(before)) ||
        (at === 0 && words.length <= ALONE) ||
        (words[at + 1] === "now" && at + 2 === words.length)),
  );

/** Told of the thing right after the work, with nothing against it. */
const saidOfIt = (scan: Scan, clause: Clause): Verdict | undefined => {
  const all = wordsOf(scan, clause);
  const against = (word: string): boolean =>
    DENIALS.has(word) || SOFTENERS.has(word) || SUPPOSED.has(word) || ENDS.has(word);
  if (all.some(against)) return undefined;
  const start = all.findIndex((word) => !FILLERS.has(word));
  const words = start < 0 ? [] : all.slice(start);
  return doesItsJob(words) || (!US.has(words[0] ?? "") && isFit(words))
    ? verdict(clause, "holding", "said-of-it")
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
      return troubleGone(scan, { from: deed + 1, to: clause.to }) ?? [];
    if (!follows(at) || startingIn(scan.verdicts, clause.from, clause.to).length > 0) return [];
    const gone = troubleGone(scan, clause);
    if (gone !== undefined) return [gone];
    if (startingIn(scan.faults, clause.from, clause.to).length > 0) return [];
    const lasted = hasLasted(scan, clause);
    if (lasted !== undefined) return [lasted];
    return told(clause) ? [] : (saidOfIt(scan, clause) ?? []);
  });
};

const LOOK_BACK = 5;

/** "Hope it holds", "should hold", "if it leaks again": nothing has been seen yet. */
export const withoutHopes = (
  scan: Scan,
  verdicts: readonly Verdict[],
  clauses: readonly Clause[],
  index: Int32Array,
): Verdict[] =>
  verdicts.flatMap((each) => {
    const clause = clauses[index[each.from] ?? 0];
    const from = Math.max(clause?.from ?? 0, each.from - LOOK_BACK);
    const hoped = wordsOf(scan, { from, to: each.from }).some((word) => SUPPOSED.has(word));
    if (!hoped || each.value.outcome === "untested") return [each];
    return each.value.outcome === "holding"
      ? [{ ...each, value: { outcome: "untested" as const }, source: `hoped:${each.source}` }]
      : [];
  });
