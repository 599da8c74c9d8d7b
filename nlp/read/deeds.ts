import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import { tokensOf } from "./ground.ts";
import { cueEnds, isVerb, statusOf } from "./modality.ts";
import { nominalPlans } from "./nominal-plans.ts";
import { openDeeds } from "./open-deeds.ts";
import type { ActRef, Scan } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";

const nounTokens = (scan: Scan): Set<number> => {
  const nouns = new Set<number>();
  const add = (from: number, to: number) => {
    for (let at = from; at < to; at++) nouns.add(at);
  };
  for (const ref of scan.components) if (ref.to - ref.from > 1 || !ref.weak) add(ref.from, ref.to);
  for (const ref of scan.materials) if (ref.to - ref.from > 1) add(ref.from, ref.to);
  return nouns;
};

/** Of acts that share their verb or overlap, the longest that starts first. */
const disjoint = (acts: readonly ActRef[]): ActRef[] => {
  const kept: ActRef[] = [];
  for (const act of acts) {
    const last = kept.at(-1);
    const verbAt = act.verb?.at ?? act.from;
    if (
      last !== undefined &&
      act.from < last.to &&
      (verbAt === (last.verb?.at ?? -1) || act.to <= last.to || act.verb === null)
    )
      continue;
    if (last !== undefined && verbAt === (last.verb?.at ?? -1)) continue;
    kept.push(act);
  }
  return kept;
};

/** The acts of a note whose words are verbs here, in order, with how each is meant. */
export const deedsOf = (scan: Scan, clauses: readonly Clause[], index: Int32Array): Deed[] => {
  const nouns = nounTokens(scan);
  const ends = cueEnds(scan);
  const verbal = scan.acts.filter((act) => {
    const clause = clauses[index[act.from] ?? 0];
    return clause !== undefined && isVerb(act, scan, clause, nouns);
  });
  const acts = disjoint(verbal);
  const verbs = new Set(acts.map((act) => act.verb?.at ?? act.from));
  const told = tokensOf([...scan.faults.filter((fault) => fault.to - fault.from > 1), ...scan.verdicts]);
  const deeds: Deed[] = [];
  for (const act of acts) {
    const at = act.verb?.at ?? act.from;
    const clauseAt = index[at] ?? 0;
    const clause = clauses[clauseAt] ?? { from: 0, to: scan.tokens.length, hard: true, subordinate: false };
    const status = statusOf(act, { scan, clause, ends, at, verbs, told });
    const { sense, action } = act.value;
    const { source } = act;
    const future = status === "done" && isAhead(act, scan, clause);
    const deed = {
      from: act.from,
      to: act.to,
      at,
      clause: clauseAt,
      sense,
      action,
      status:
        future || (status === "done" && scan.tokens[at]?.norm.startsWith("order") === true)
          ? ("plan" as const)
          : status === "purpose" && sense === "look"
            ? ("done" as const)
            : status,
      source,
    };
    if (!drivesOnly(deed, scan) && !namesOnly(deed, scan))
      deeds.push(carriesOn(act, deed, deeds.at(-1), scan, clauses) ? { ...deed, status: "plan" } : deed);
  }
  const all = [...deeds, ...openDeeds(scan, clauses, deeds)].sort((a, b) => a.from - b.from);
  return [...all, ...nominalPlans(scan, clauses, index, all)].sort((a, b) => a.at - b.at);
};

/** "The new one quit": what is new was put in before. */
const namesOnly = (deed: Deed, scan: Scan): boolean => {
  if (deed.sense !== "new") return false;
  const before = scan.tokens[deed.from - 1]?.norm ?? "";
  const inName = touching(scan.components, deed.from, deed.from).some(
    (ref) => ref.from <= deed.from && deed.from < ref.to && ref.to - ref.from > 1,
  );
  return (
    inName ||
    (!deed.source.includes("is|are") &&
      ["the", "that", "this", "like", "as", "than", "since", "every", "is"].includes(before))
  );
};

/** Told with a time to come, and in a form that may be of the future: "till I've put a plug on it tomorrow". */
const isAhead = (act: ActRef, scan: Scan, clause: Clause): boolean =>
  startingIn(scan.times, clause.from, clause.to).some(
    (time) =>
      time.from >= clause.from &&
      time.to <= clause.to &&
      time.time.direction === "future" &&
      time.time.role === "point",
  ) && act.value.sense !== "look";

/** "put two thousand miles on her". */
const drivesOnly = (deed: Deed, scan: Scan): boolean =>
  startingIn(scan.amounts, deed.from, deed.to).some(
    (amount) =>
      (amount.what === "miles" || amount.what === "km") && amount.from >= deed.from && amount.to <= deed.to,
  );

/** "I'm going to cut it out and let in new wood": the second verb is intended too. */
const carriesOn = (
  act: ActRef,
  deed: Deed,
  last: Deed | undefined,
  scan: Scan,
  clauses: readonly Clause[],
): boolean => {
  if (last?.status !== "plan" || last.clause !== deed.clause - 1 || act.verb?.forms.includes("base") !== true)
    return false;
  const start = clauses[deed.clause]?.from ?? deed.at;
  const before = scan.tokens.slice(start, deed.at).map((token) => token.norm);
  return before.every((word) => ["and", "then", "just", "also", "or"].includes(word));
};
