import type { Build } from "./build.ts";
import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import { ofPart } from "./own-times.ts";
import type { TimeRef } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { startingIn, touching } from "./windows.ts";

const NEAR_VERDICT = 8;
const LONGEST = 8;
/** How far, in words, from a deed the parts that went into it may be told of. */
const PHRASE = 14;

const clauseOf = ({ clauses, index }: Build, at: number): Clause =>
  clauses[index[at] ?? 0] ?? { from: 0, to: 0, hard: true, subordinate: false };

/** "We've done a hundred nights since April": since then the rig was used, not the fix. */
const ofUse = (time: TimeRef, told: Told, build: Build): boolean => {
  const clause = clauseOf(build, time.from);
  const start = build.clauses[(build.index[time.from] ?? 0) - 1]?.from ?? clause.from;
  return startingIn(told.amounts, start, clause.to).some((amount) => build.ofRig.has(amount.from));
};

/** "It held for two months and let go": how long ago it let go is not told. */
const isOver = (time: TimeRef, told: Told): boolean =>
  touching(told.verdicts, time.from - NEAR_VERDICT, time.to + NEAR_VERDICT).some(
    ({ from, to, value }) =>
      value.outcome === "failed" && from <= time.to + NEAR_VERDICT && to >= time.from - NEAR_VERDICT,
  );

/** "Dead since summer", "not been up there since October": since when something was wrong or undone. */
const ofTrouble = (time: TimeRef, told: Told, build: Build): boolean => {
  const { from, to } = clauseOf(build, time.from);
  const good = startingIn(told.verdicts, from, to).some((each) => each.value.outcome !== "failed");
  const start = build.clauses[(build.index[time.from] ?? 0) - 1]?.from ?? from;
  const undone = startingIn(build.deeds, start, to).some((deed) => deed.status === "not");
  return (
    !good &&
    (undone || startingIn(told.faults, from, to).length > 0 || startingIn(told.faults, start, to).length > 0)
  );
};

/** "In the two years since I rebuilt it". */
export const sinceDeed = (deed: Deed, { clauses, scan, times }: Build): TimeRef | undefined => {
  const { from, to } = clauses[deed.clause] ?? { from: 0, to: 0 };
  return startingIn(times, from - LONGEST, to).find(
    (time) =>
      time.time.role === "lasting" &&
      time.to >= from - 1 &&
      time.to <= deed.at &&
      scan.tokens.slice(time.to - 1, time.to + 1).some((token) => token.norm === "since"),
  );
};

/** What has held for five months was done five months ago; "since Easter" was done at Easter. */
export const lastingOf = (event: Event, told: Told, build: Build): TimeRef | undefined => {
  const first = Math.min(...event.deeds.map((deed) => deed.at));
  return startingIn(told.times, event.from, event.to).find((time) => {
    if (time.time.role !== "lasting" && time.time.role !== "since") return false;
    if (isOver(time, told) || ofUse(time, told, build)) return false;
    if (
      event.deeds.some(
        (deed) => deed.at < time.from && time.from - deed.at <= PHRASE && ofPart(time, deed, build),
      )
    )
      return false;
    return time.time.role === "lasting" || (time.from > first && !ofTrouble(time, told, build));
  });
};
