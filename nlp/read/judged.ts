import type { Build } from "./build.ts";
import { type Deed, IMPLIED } from "./deed.ts";
import { wordAt } from "./ground.ts";
import { type Judged, judge } from "./outcome.ts";
import type { Stretch } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { startingIn } from "./windows.ts";
import { DETERMINERS, listed } from "./words.ts";

const PAST_STATE = listed("recordsPastState");
/** "We went out", "checked for leaks", "it wasn't": no trouble of the thing. */
const NOT_OF_IT = listed("judgedNotOfIt");
const NOW_AGAIN = new Set(["again", "still", "now", "already"]);

/** "That silicone gave out": work that is only named, and so is what the verb is about. */
const isNamed = (deed: Deed | undefined): boolean =>
  deed?.source === IMPLIED || deed?.source.startsWith("product-on") === true;

/** A fault told after a deed that tells how it went on, not why it was done. */
const tellsOutcome = (
  fault: Told["faults"][number],
  deed: Deed | undefined,
  { scan, clauses, index }: Build,
): boolean => {
  const at = index[fault.from] ?? 0;
  const clause = clauses[at];
  if (clause === undefined || fault.value < 2) return false;
  if (at === (deed?.clause ?? -1)) return isNamed(deed) && !DETERMINERS.has(wordAt(scan, fault.from - 1));
  if (NOT_OF_IT.has(wordAt(scan, fault.from - 1))) return false;
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

/** How near, in words, the bad of a good and bad side stands. */
const BESIDE = 7;
const TURNS = listed("judgedTurns");
const WERE = listed("judgedWere");

/** "Hot's fine, cold still drips": good and bad at once, not one after the other. */
const halfGood = (
  each: Told["verdicts"][number],
  before: Told["verdicts"][number] | undefined,
  { scan }: Build,
): Told["verdicts"][number] => {
  if (before === undefined || each.value.outcome !== "failed" || before.value.outcome !== "holding")
    return each;
  const between = scan.tokens.slice(before.from, each.to);
  const atOnce =
    each.from - before.to <= BESIDE &&
    !between.some(({ norm, kind }) => TURNS.has(norm) || (kind === "mark" && ENDS.has(norm))) &&
    !between.slice(0, before.to - before.from).some(({ norm }) => WERE.has(norm)) &&
    !WERE.has(wordAt(scan, before.from - 1));
  return atOnce ? { ...each, value: { outcome: "partly" }, source: `but:${each.source}` } : each;
};
const ENDS = new Set([".", "!", "?", ";"]);

const CONCEDES = new Set(["although", "though", "despite"]);

/** "It still rattles although I shimmed it": where a verdict before the deed starts. */
const conceded = (event: Event, { scan, clauses }: Build): number | undefined => {
  const at = event.deeds[0]?.clause ?? 0;
  const from = clauses[at]?.from ?? 0;
  const even = wordAt(scan, from) === "even" ? from + 1 : from;
  return CONCEDES.has(wordAt(scan, even)) ? clauses[at - 1]?.from : undefined;
};

/** Whether something is said after a deed; where words only imply that something was done, they may say it themselves. */
const isOn = (deed: Deed | undefined, { from, to }: Stretch): boolean =>
  deed === undefined || (deed.source === IMPLIED ? to > deed.at : from > deed.at);

/** The verdict on one piece of work, from its own words and, when they give none, from those said early. */
export const judged = (told: Told, event: Event, early: Told["verdicts"], build: Build): Judged => {
  if (event.action === "remove") return { outcome: "untested", spans: [], rule: "removed" };
  const work = event.deeds.filter((deed) => deed.sense !== "prep");
  const [first] = (work.length > 0 ? work : event.deeds).toSorted((a, b) => a.at - b.at);
  const last = event.deeds.at(-1);
  const yet = conceded(event, build);
  const verdicts = startingIn(told.verdicts, yet ?? event.from, event.to).filter(
    (verdict) => yet !== undefined || isOn(first, verdict),
  );
  const fair = verdicts.map((each, at) => halfGood(each, verdicts[at - 1], build));
  const faults = startingIn(told.faults, event.from, event.to).filter(
    (fault) => isOn(last, fault) && tellsOutcome(fault, last, build),
  );
  const result = judge(
    fair,
    faults,
    faults.filter((fault) => contrasts(fault, build)),
  );
  return result.outcome === "untested" && result.spans.length === 0 && early.length > 0
    ? judge(early, [], [])
    : result;
};
