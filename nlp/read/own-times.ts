import type { Build } from "./build.ts";
import type { Deed } from "./deed.ts";
import { isPastPoint } from "./past-points.ts";
import type { TimeRef } from "./scan.ts";
import { startingIn } from "./windows.ts";
import { listed, SUBJECTS } from "./words.ts";

/** "In by the fifth": no later than that, and told because it was then. */
const isBy = (time: TimeRef, { scan, today }: Build): boolean =>
  time.time.role === "until" && scan.tokens[time.from]?.norm === "by" && time.time.edtf.slice(0, 10) <= today;

const timesIn = ({ clauses, times, today }: Build, clause: number): readonly TimeRef[] => {
  const { from, to } = clauses[clause] ?? { from: 0, to: 0 };
  return startingIn(times, from, to).filter((time) => time.to <= to && isPastPoint(time, today));
};

const OPENERS = new Set(["when", "that"]);
/** "It was Easter Monday, I think, when I put the step on". */
export const cleft = (deed: Deed, build: Build): TimeRef | undefined => {
  const { clauses, scan } = build;
  const clause = clauses[deed.clause];
  if (clause === undefined || !OPENERS.has(scan.tokens[clause.from]?.norm ?? "")) return undefined;
  return [1, 2].flatMap((back) => {
    const before = clauses[deed.clause - back];
    const said = scan.tokens
      .slice(before?.from, before?.to)
      .some(({ norm }) => norm === "was" || norm === "twas");
    return before !== undefined && said ? timesIn(build, deed.clause - back) : [];
  })[0];
};

const HISTORY = listed("datesHistory");
const OWNERS = listed("datesOwners");
const VERB_AFTER = 3;

/** "With one I bought in January", "the spare we've carried since 2021": told of the part and not of the work. */
export const ofPart = (time: TimeRef, deed: Deed, { scan }: Build): boolean => {
  const words = scan.tokens.slice(deed.at + 1, time.from).map((token) => token.norm);
  return words.some(
    (word, at) =>
      HISTORY.has(word) && words.slice(Math.max(0, at - VERB_AFTER), at).some((each) => OWNERS.has(each)),
  );
};

const nearest = (times: readonly TimeRef[], deed: Deed): TimeRef | undefined =>
  times.toSorted((a, b) => Math.abs(a.from - deed.at) - Math.abs(b.from - deed.at))[0];

/** Of the deeds in one clause, the one that a time is told of: those on its left, or on its right where times lead. */
const claimant = (time: TimeRef, deeds: readonly Deed[], leads: boolean): Deed | undefined => {
  const left = deeds.findLast((deed) => deed.at < time.from);
  const right = deeds.find((deed) => deed.at >= time.to);
  return leads ? (right ?? left) : (left ?? right);
};

/** The time in the clause of a deed that is told of it; `own` are the deeds of the same piece of work. */
export const inOwnClause = (deed: Deed, own: readonly Deed[], build: Build): TimeRef | undefined => {
  const times = timesIn(build, deed.clause).filter((time) => !ofPart(time, deed, build));
  const { from, to } = build.clauses[deed.clause] ?? { from: 0, to: 0 };
  if (times.length === 0) return startingIn(build.times, from, to).find((time) => isBy(time, build));
  if (times.length === 1) return times[0];
  const deeds = startingIn(build.deeds, from, to).filter((each) => each.status !== "talk");
  const isOwn = (other: Deed): boolean => own.some((each) => each.at === other.at);
  if (deeds.every(isOwn)) return nearest(times, deed);
  const leads = (times[0]?.from ?? 0) < (deeds[0]?.at ?? 0);
  const claimed = times.filter((time) => {
    const by = claimant(time, deeds, leads);
    return by !== undefined && isOwn(by);
  });
  return nearest(claimed, deed);
};

const JOINERS = new Set(["and", "n", "then", "&", "+", ",", "plus"]);
const OPENING = 4;
const FARTHEST = 4;

/** "and tightened the ladder": a clause that shares the subject of the one before it. */
const sharesSubject = ({ clauses, scan, deeds }: Build, at: number): boolean => {
  const clause = clauses[at];
  if (clause === undefined || (clause.hard && scan.tokens[clause.from]?.norm !== "then")) return false;
  const verb = startingIn(deeds, clause.from, clause.from + OPENING)[0];
  if (verb === undefined) return false;
  const lead = scan.tokens.slice(clause.from, verb.at).map((token) => token.norm);
  const before = scan.tokens[clause.from - 1]?.norm ?? "";
  return (
    !lead.some((word) => SUBJECTS.has(word)) &&
    (lead.some((word) => JOINERS.has(word)) || JOINERS.has(before))
  );
};

/** "In June I pulled the pan and glassed the crack": what one subject did in one breath was done at one time. */
export const goesOn = (deed: Deed, build: Build): TimeRef | undefined => {
  const { clauses, deeds } = build;
  for (let at = deed.clause; at > deed.clause - FARTHEST && sharesSubject(build, at); at--) {
    const { from, to } = clauses[at - 1] ?? { from: 0, to: 0 };
    if (!startingIn(deeds, from, to).some((each) => each.status === "done")) return undefined;
    const time = timesIn(build, at - 1).at(-1);
    if (time !== undefined) return time;
  }
  if (!sharesSubject(build, deed.clause + 1)) return undefined;
  const { to } = clauses[deed.clause + 1] ?? { to: 0 };
  const next = timesIn(build, deed.clause + 1);
  return next.length === 1 && to - (next[0]?.to ?? 0) <= 1 ? next[0] : undefined;
};
