import { emptyTally, runRig, type Stated, type Tally, type WorldSize } from "./keeper.ts";
import type { Nature } from "./nature.ts";
import { everyDays, type Policy } from "./policy.ts";

export const runRigs = (rigs: number, nature: Nature, size: WorldSize, policy: Policy): Tally => {
  const tally = emptyTally();
  for (let rig = 1; rig <= rigs; rig++) runRig(rig * 7919, nature, size, policy, tally);
  return tally;
};

/** Stated chances by tenths against what came, with the standard error of the share. */
export type Tenth = {
  readonly from: number;
  readonly count: number;
  readonly stated: number;
  readonly came: number;
  readonly error: number;
};

export const byTenths = (stated: readonly Stated[]): readonly Tenth[] =>
  Array.from({ length: 10 }, (_, tenth) => {
    const inside = stated.filter(({ chance }) => Math.min(9, Math.floor(chance * 10)) === tenth);
    const count = inside.length;
    const mean = (value: (one: Stated) => number) =>
      inside.reduce((sum, one) => sum + value(one), 0) / Math.max(1, count);
    const came = mean((one) => (one.came ? 1 : 0));
    return {
      from: tenth / 10,
      count,
      stated: mean(({ chance }) => chance),
      came,
      error: Math.sqrt((came * (1 - came)) / Math.max(1, count)),
    };
  }).filter(({ count }) => count > 0);

/** Distance between stated and come, averaged over all that was stated. */
export const meanGap = (tenths: readonly Tenth[]): number => {
  const all = tenths.reduce((sum, { count }) => sum + count, 0);
  return tenths.reduce((sum, { count, stated, came }) => sum + count * Math.abs(stated - came), 0) / all;
};

/** Looks that a fixed round needs for the same weighted unnoticed time, between the two nearest rounds. */
export const fixedRoundFor = (
  unnoticed: number,
  rigs: number,
  nature: Nature,
  size: WorldSize,
): { days: number; looks: number; lookCost: number } => {
  let [low, high] = [5, 600];
  const at = (days: number) => ({ days, ...runRigs(rigs, nature, size, everyDays(days)) });
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (at(middle).unnoticed <= unnoticed) low = middle;
    else high = middle;
  }
  const [one, two] = [at(low), at(high)];
  const share = (unnoticed - one.unnoticed) / (two.unnoticed - one.unnoticed);
  const mix = (a: number, b: number) => a + (b - a) * share;
  return {
    days: mix(low, high),
    looks: mix(one.looks, two.looks),
    lookCost: mix(one.lookCost, two.lookCost),
  };
};
