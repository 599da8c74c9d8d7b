import { describe, expect, it } from "vitest";
import {
  annualCost,
  breakEvenPresent,
  capitalRecovery,
  mendingCost,
} from "../../../shared/outlook/annual-cost.ts";

describe("capital recovery", () => {
  // Discrete compounding tables for 8 % and 15 %, n = 1 to 10 (public problem page, read).
  it.each([
    [0.08, [1.08, 0.5608, 0.388, 0.3019, 0.2505, 0.2163, 0.1921, 0.174, 0.1601, 0.149]],
    [0.15, [1.15, 0.6151, 0.438, 0.3503, 0.2983, 0.2642, 0.2404, 0.2229, 0.2096, 0.1993]],
  ])("meets the table for %d", (rate, factors) => {
    factors.forEach((factor, index) => {
      expect(Math.abs(capitalRecovery(rate, index + 1) - factor)).toBeLessThan(6e-5);
    });
  });

  it("is one part a year without interest", () => {
    expect(capitalRecovery(0, 8)).toBe(1 / 8);
    expect(capitalRecovery(1e-9, 8)).toBeCloseTo(1 / 8, 6);
  });
});

describe("equivalent annual cost", () => {
  // Engineering economy exercise with solution (sciemce.com): 50,000 with 5,000 salvage, 5 years, 10 %: 12,371.
  it("meets a textbook's capital recovery with salvage", () => {
    expect(annualCost(0.1, { first: 50_000, salvage: 5000, years: 5 })).toBeCloseTo(12_371, 0);
  });

  // Solved problem (wizedu.com 1097152): two methods at 15 %, 15,820 and 14,831.2 with four-digit factors.
  it("meets a solved comparison of two lives", () => {
    const first = annualCost(0.15, { first: 20_000, salvage: 5000, years: 3, yearly: 8500 });
    const second = annualCost(0.15, { first: 15_000, salvage: 3000, years: 2, yearly: 7000 });
    expect(Math.abs(first - 15_820)).toBeLessThan(1);
    expect(Math.abs(second - 14_831.2)).toBeLessThan(1);
  });

  // Problem with its verdict (justaaa.com 240549): A is to be preferred at 8 %.
  it("prefers what a published problem prefers", () => {
    const a = annualCost(0.08, { first: 7000, salvage: 3000, years: 5, yearly: 2000 });
    const b = annualCost(0.08, { first: 9000, salvage: 1600, years: 10, yearly: 2400 });
    expect(a).toBeLessThan(b);
  });
});

describe("mending again and again", () => {
  const rate = 0.05;
  const fixedLife = (years: number) => (1 + rate) ** -years;

  it("costs the capital recovery of the mend when its life is fixed", () => {
    expect(mendingCost(rate, 30, 0, fixedLife(0.75))).toBeCloseTo(30 * capitalRecovery(rate, 0.75), 9);
  });

  it("at a rate near none costs a mend and a failure each time", () => {
    expect(mendingCost(1e-7, 30, 70, (1 + 1e-7) ** -2)).toBeCloseTo(50, 2);
  });

  it("breaks even where both ways cost the same", () => {
    const replacing = annualCost(rate, { first: 400, years: 10 });
    for (const failure of [0, 40])
      expect(mendingCost(rate, 30, failure, breakEvenPresent(rate, 30, failure, replacing))).toBeCloseTo(
        replacing,
        9,
      );
    const years = -Math.log(breakEvenPresent(rate, 30, 0, replacing)) / Math.log1p(rate);
    expect(capitalRecovery(rate, years) * 30).toBeCloseTo(replacing, 9);
    expect(breakEvenPresent(rate, 400, 0, 10)).toBeLessThan(0);
  });
});
