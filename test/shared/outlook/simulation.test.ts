import { beforeAll, describe, expect, it } from "vitest";
import type { Tally } from "./world/keeper.ts";
import { AS_EXPECTED } from "./world/nature.ts";
import { learning, unlearned } from "./world/policy.ts";
import { byTenths, fixedRoundFor, meanGap, runRigs } from "./world/report.ts";

/**
 * Rigs whose true lives are known to the test alone; the program is told what a keeper would tell. A small seeded run of
 * the full simulation (`npx tsx test/shared/outlook/simulate.ts`).
 */
const RIGS = 40;
const SIZE = { years: 5, places: 8 };

describe("simulated rigs", () => {
  let learned: Tally;
  let prior: Tally;

  beforeAll(() => {
    learned = runRigs(RIGS, AS_EXPECTED, SIZE, learning);
    prior = runRigs(RIGS, AS_EXPECTED, SIZE, unlearned);
  }, 60_000);

  it("states true chances of having let go", () => {
    const tenths = byTenths(learned.gone);
    expect(meanGap(tenths)).toBeLessThan(0.02);
    for (const { stated, came, count, error } of tenths)
      if (count >= 100) expect(Math.abs(stated - came)).toBeLessThan(0.02 + 3 * error);
  });

  it("states true chances of lasting a trip", () => {
    expect(meanGap(byTenths(learned.lasts))).toBeLessThan(0.02);
  });

  it("states them better for having learned from the rig's own verdicts", () => {
    expect(meanGap(byTenths(learned.lasts))).toBeLessThan(meanGap(byTenths(prior.lasts)));
  });

  it("needs 30 % fewer looks than a fixed round at the same weighted unnoticed time", () => {
    const round = fixedRoundFor(learned.unnoticed, RIGS, AS_EXPECTED, SIZE);
    expect(learned.looks / round.looks).toBeLessThan(0.7);
  }, 60_000);
});
