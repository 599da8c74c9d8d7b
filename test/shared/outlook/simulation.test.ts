import { beforeAll, describe, expect, it } from "vitest";
import type { Tally } from "./world/keeper.ts";
import { AS_EXPECTED } from "./world/nature.ts";
import { learning, type Policy, unlearned } from "./world/policy.ts";
import { byTenths, fixedRoundFor, meanGap, runRigs } from "./world/report.ts";

/**
 * Rigs whose true lives are known to the test alone; the program is told what a keeper would tell. A small seeded run of
 * the full simulation (`npx tsx test/shared/outlook/figures.ts`).
 */
const RIGS = 30;
const SIZE = { years: 4, places: 8 };
/** Lives in one place hang together, so that few rigs tell little of the rarer chances. */
const FEW_RIGS = 0.04;

describe("simulated rigs", () => {
  let learned: Tally;

  beforeAll(() => {
    learned = runRigs(RIGS, AS_EXPECTED, SIZE, learning);
  }, 60_000);

  it("states true chances of having let go", () => {
    const tenths = byTenths(learned.gone);
    expect(meanGap(tenths)).toBeLessThan(0.02);
    for (const { stated, came, count, error } of tenths)
      if (count >= 100) expect(Math.abs(stated - came)).toBeLessThan(0.02 + 3 * error);
  });

  it("states true chances of lasting a trip", () => {
    const tenths = byTenths(learned.lasts);
    expect(meanGap(tenths)).toBeLessThan(FEW_RIGS);
    for (const { stated, came, count, error } of tenths)
      if (count >= 100) expect(Math.abs(stated - came)).toBeLessThan(0.02 + 3 * error);
  });

  it("comes nearer the truth by learning where lives are shorter than the table says", () => {
    const hard = { ...AS_EXPECTED, bias: 0.4 };
    const gap = (policy: Policy) => meanGap(byTenths(runRigs(RIGS, hard, SIZE, policy).lasts));
    expect(gap(learning)).toBeLessThan(0.7 * gap(unlearned));
  }, 60_000);

  it("needs 30 % fewer looks than a fixed round at the same weighted unnoticed time", () => {
    const round = fixedRoundFor(learned.unnoticed, RIGS, AS_EXPECTED, SIZE);
    expect(learned.looks / round.looks).toBeLessThan(0.7);
  }, 60_000);
});
