import { type Ground, tokensOf } from "./ground.ts";
import { isMuted } from "./muted.ts";
import type { Stretch } from "./scan.ts";
import type { Told } from "./told.ts";

/** All that a note says, by sort, without what it takes back. */
export type Said = Omit<Told, "topic">;

/** A word inside a name is no fault: "smoke" in "smoke alarm". */
const outside = <T extends Stretch>(faults: readonly T[], names: readonly Stretch[]): T[] => {
  const named = tokensOf(names);
  return faults.filter((fault) => !(named.has(fault.from) && named.has(fault.to - 1)));
};

const uncovered = <T extends Stretch>(faults: readonly T[], covers: readonly Stretch[]): T[] => {
  const covered = tokensOf(covers);
  return faults.filter((fault) => !covered.has(fault.from) && !covered.has(fault.to - 1));
};

const ownFaults = ({ scan, deeds }: Ground) => {
  const names = [...scan.components, ...scan.materials].filter((ref) => ref.to - ref.from > 1);
  const verbs = deeds
    .filter((deed) => deed.status === "done" || deed.status === "plan")
    .map((deed) => ({ from: deed.at, to: deed.at + 1 }));
  return uncovered(outside(scan.faults, names), [...scan.amounts, ...scan.verdicts, ...scan.times, ...verbs]);
};

/** What a note says; with `muted` left out, only what it tells as ours and now. */
export const saidIn = (ground: Ground, { muted }: { readonly muted: boolean }): Said => {
  const { scan, fixed } = ground;
  const live = <T extends Stretch>(refs: readonly T[]): T[] =>
    refs.filter((ref) => fixed.dead[ref.from] !== 1 && (muted || !isMuted(ground.muted, ref.from)));
  return {
    deeds: live(ground.deeds),
    verdicts: live(scan.verdicts),
    faults: live(ownFaults(ground)),
    times: live(scan.times),
    amounts: live(fixed.amounts),
    materials: live(scan.materials),
    again: scan.tokens.flatMap((token, at) => (token.norm === "again" ? [at] : [])),
  };
};
