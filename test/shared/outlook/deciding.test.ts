import { describe, expect, it } from "vitest";
import type { KeptRecord } from "../../../shared/history.ts";
import { type Decision, decide, decisionWords, type MoneyGiven } from "../../../shared/outlook/index.ts";
import { kept, rigOn, verdict, withVerdicts } from "./records.ts";

const NOTHING: MoneyGiven = { mendCost: null, replaceCost: null, replaceYears: null, failureCost: null };

const patch = (said: string, cost: number | null = null) => ({
  ...kept(said, { component: "shower", action: "patch", materials: ["epoxy"], cost }),
  line: 1,
});

const failedLine = (dates: readonly [string, string][]): KeptRecord[] => {
  const last = patch("2026-05-01", 30);
  const failed = dates.map(([made, gone]) => ({
    ...withVerdicts(patch(made, 30), verdict("failed", gone)),
    closedBy: last.id,
  }));
  return [...failed, last];
};

const often = failedLine([
  ["2024-09-01", "2024-12-01"],
  ["2024-12-10", "2025-03-01"],
  ["2025-03-10", "2025-07-01"],
]);
const seldom = failedLine([["2017-05-01", "2022-05-01"]]);

const decided = (line: readonly KeptRecord[], given: Partial<MoneyGiven>): Decision => {
  const decision = decide({
    component: "shower",
    line,
    given: { ...NOTHING, ...given },
    ...rigOn("2026-06-01"),
  });
  if (decision === undefined) throw new Error("No decision.");
  return decision;
};

const pounds = (amount: number) => `£${amount}`;
const MONEY = { mendCost: 30, replaceCost: 400, replaceYears: 10, failureCost: 100 };

describe("deciding", () => {
  it("replaces what fails every few months and mends what holds for years", () => {
    expect(decided(often, MONEY).recommend).toBe("replace");
    expect(decided(seldom, { ...MONEY, failureCost: 20 }).recommend).toBe("mend");
  });

  it("finds patching dearer the more often it failed, and the dearer a failure is", () => {
    expect(decided(often, MONEY).mendPerYear).toBeGreaterThan(decided(seldom, MONEY).mendPerYear);
    expect(decided(often, { ...MONEY, failureCost: 500 }).mendPerYear).toBeGreaterThan(
      decided(often, MONEY).mendPerYear,
    );
  });

  it("breaks even at its own break-even price", () => {
    const { breakEvenPrice, mendPerYear } = decided(often, MONEY);
    const even = decided(often, { ...MONEY, replaceCost: breakEvenPrice });
    expect(even.replacePerYear).toBeCloseTo(mendPerYear, 6);
    expect(even.recommend).toBe("either");
  });

  it("puts its break-even life on the side that its costs are on", () => {
    for (const [line, money] of [
      [often, MONEY],
      [seldom, MONEY],
      [seldom, { ...MONEY, failureCost: 10 }],
    ] as const) {
      const { breakEvenYears, mendPerYear, replacePerYear, ways } = decided(line, money);
      expect((ways[0]?.typicalYears ?? 0) > (breakEvenYears ?? 0)).toBe(mendPerYear < (replacePerYear ?? 0));
    }
  });

  it("says how long those that gave out had lasted", () => {
    const [way] = decided(often, MONEY).ways;
    expect(way).toMatchObject({ tries: 4, failed: 3 });
    expect(way?.livedMonths.map(Math.round)).toEqual([3, 3, 4]);
  });

  it("asks first for the price of a new one", () => {
    expect(decided(often, {})).toMatchObject({
      missing: "replaceCost",
      recommend: null,
      replacePerYear: null,
    });
  });

  it("takes prices from the records", () => {
    const todo = {
      ...kept("2026-05-20", {
        component: "shower",
        kind: "todo",
        action: "replace",
        cost: 350,
        outcome: null,
      }),
      line: 1,
    };
    expect(decided([...often, todo], {}).facts).toMatchObject({ mendCost: 30, replaceCost: 350 });
  });

  it("asks only for a number that could turn the answer", () => {
    expect(decided(often, { ...MONEY, failureCost: null, replaceCost: 40 }).missing).toBeNull();
    const { breakEvenPrice } = decided(often, { ...MONEY, failureCost: null });
    expect(decided(often, { ...MONEY, failureCost: null, replaceCost: breakEvenPrice }).missing).toBe(
      "failureCost",
    );
  });

  it("names its weak points", () => {
    const weak = (line: readonly KeptRecord[]) =>
      decided(line, { replaceCost: 400 }).weak.map((point) => point.is);
    expect(weak(often)).toEqual(["guessed failure cost", "guessed years", "own hours"]);
    expect(weak([patch("2026-05-01")])).toContain("no failure yet");
  });

  it("says it in plain words, with a question only when one matters", () => {
    expect(decisionWords("shower", decided(often, {}), pounds)).toMatch(/\?$/);
    const words = decisionWords("shower", decided(often, MONEY), pounds);
    expect(words).toContain("I'd replace it.");
    expect(words).not.toContain("?");
  });

  it("says every sum in the owner's currency", () => {
    for (const given of [{}, { replaceCost: 400 }, MONEY]) {
      const words = decisionWords("shower", decided(often, given), pounds);
      expect(words).toMatch(/comes to about £\d/);
      expect(words).not.toMatch(/(?:about|at|than) \d+\b(?! years| months)/);
    }
  });

  it("has nothing to say where nothing was mended", () => {
    const bought = { ...kept("2026-05-01", { component: "shower", action: "replace" }), line: 1 };
    expect(
      decide({ component: "shower", line: [bought], given: NOTHING, ...rigOn("2026-06-01") }),
    ).toBeUndefined();
  });
});
