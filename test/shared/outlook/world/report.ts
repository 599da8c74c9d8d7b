import { emptyTally, runRig, type Stated, type Tally, type WorldSize } from "./keeper.ts";
import type { Nature } from "./nature.ts";
import { everyDays, type Policy } from "./policy.ts";

export const runRigs = (rigs: number, nature: Nature, size: WorldSize, policy: Policy): Tally => {
  const tally = emptyTally();
  for (let rig = 1; rig <= rigs; rig++) runRig(rig * 7919, nature, size, policy, tally);
  return tally;
};

/**
 * Stated chances by tenths against what came, with the standard error of their difference. Chances stated of one rig hang
 * together, so that rigs are what is counted.
 */
export type Tenth = {
  readonly from: number;
  readonly count: number;
  readonly rigs: number;
  readonly stated: number;
  readonly came: number;
  readonly error: number;
};

const surprise = ({ chance, came }: Stated): number => (came ? 1 : 0) - chance;

const tenthOf = (from: number, inside: readonly Stated[]): Tenth => {
  const count = inside.length;
  const sum = (value: (one: Stated) => number) => inside.reduce((all, one) => all + value(one), 0);
  const byRig = new Map<number, number>();
  for (const one of inside) byRig.set(one.rig, (byRig.get(one.rig) ?? 0) + surprise(one));
  const squares = [...byRig.values()].reduce((all, total) => all + total ** 2, 0);
  return {
    from,
    count,
    rigs: byRig.size,
    stated: sum(({ chance }) => chance) / count,
    came: sum(({ came }) => (came ? 1 : 0)) / count,
    error: Math.sqrt(squares) / count,
  };
};

export const byTenths = (stated: readonly Stated[]): readonly Tenth[] =>
  Array.from({ length: 10 }, (_, tenth) =>
    tenthOf(
      tenth / 10,
      stated.filter(({ chance }) => Math.min(9, Math.floor(chance * 10)) === tenth),
    ),
  ).filter(({ count }) => count > 0);

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
