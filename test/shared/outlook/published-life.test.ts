import weibull from "@stdlib/stats-base-dists-weibull";
import { describe, expect, it } from "vitest";
import { letGo, likelihood, type Observation, stillGood, survival } from "../../../shared/outlook/life.ts";

const NO_DUDS = { share: 0, meanDays: 1 };

/** Our life is scaled by its median; handbooks scale by the characteristic life eta. */
const lifeOf = (beta: number, eta: number) => ({ median: eta * Math.LN2 ** (1 / beta), shape: beta });

const holds = (age: number, beta: number, eta: number) => survival(age, lifeOf(beta, eta), NO_DUDS);

const chanceOf = (seen: Observation, beta: number, eta: number) =>
  likelihood(
    seen,
    holds(seen.lower, beta, eta),
    Number.isFinite(seen.upper) ? holds(seen.upper, beta, eta) : 0,
  );

type Counted = readonly [Observation, number];

const logLikelihood = (seen: readonly Counted[], beta: number, eta: number): number =>
  seen.reduce((sum, [one, count]) => sum + count * Math.log(chanceOf(one, beta, eta)), 0);

const once = (seen: readonly Observation[]): Counted[] => seen.map((one) => [one, 1]);

/** Steepness of the likelihood in the logarithm of a parameter, against its curvature: how far off the top is. */
const stepToTop = (f: (logParameter: number) => number, at: number): number => {
  const h = 1e-3;
  const [low, here, high] = [f(at - h), f(at), f(at + h)];
  return (high - low) / 2 / h / ((high - 2 * here + low) / h ** 2);
};

/** Both partial derivatives vanish at the published estimate, within a relative tolerance of the parameter. */
const expectTop = (seen: readonly Counted[], beta: number, eta: number, tolerance: number) => {
  expect(Math.abs(stepToTop((b) => logLikelihood(seen, Math.exp(b), eta), Math.log(beta)))).toBeLessThan(
    tolerance,
  );
  expect(Math.abs(stepToTop((e) => logLikelihood(seen, beta, Math.exp(e)), Math.log(eta)))).toBeLessThan(
    tolerance,
  );
};

describe("survival of a sound fix", () => {
  it("is the Weibull survival of @stdlib/stats-base-dists-weibull", () => {
    for (const [age, beta, eta] of [
      [10, 0.8, 100],
      [800, 2.2, 1120],
      [1600, 2.2, 1120],
      [0.5, 1, 3],
    ] as const)
      expect(holds(age, beta, eta)).toBeCloseTo(1 - weibull.cdf(age, beta, eta), 12);
  });

  // real-statistics.com, survivability of the Weibull distribution: beta 2.2, eta 1120.
  it("meets a published conditional survival", () => {
    expect(holds(800, 2.2, 1120)).toBeCloseTo(0.620643, 5);
    expect(holds(1600, 2.2, 1120) / holds(800, 2.2, 1120)).toBeCloseTo(0.18001, 4);
  });

  // Nelson, Applied Life Data Analysis, pp. 69-70: beta 2, eta 13 years, aged 6.5 years, 7.1 more years (quoted).
  it("meets Nelson's mean residual life", () => {
    const step = 0.001;
    let area = 0;
    for (let age = 6.5 + step / 2; age < 80; age += step) area += holds(age, 2, 13) * step;
    expect(area / holds(6.5, 2, 13)).toBeCloseTo(7.1, 1);
  });
});

describe("likelihood of what was seen", () => {
  // NIST/SEMATECH e-Handbook 8.4.1.3: ten failures and ten units still running at 500 h.
  it("has its top at the handbook's Weibull fit with censoring", () => {
    const failures = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386];
    const width = 0.01;
    const seen = once([
      ...failures.map((at) => letGo(at - width / 2, at + width / 2)),
      ...failures.map(() => stillGood(500)),
    ]);
    expectTop(seen, 1.7208, 606.528, 1e-4);
    expect(logLikelihood(seen, 1.7208, 606.528) - failures.length * Math.log(width)).toBeCloseTo(-75.135, 2);
  });

  // Test data of lifelines (a general statistics library), test_estimation.py: 15,515 units in inspection intervals.
  it("has its top at lifelines' interval-censored Weibull fit", () => {
    const bounds = [
      [0.1, 30, 15],
      [30.1, 60, 17],
      [60.1, 90, 19],
      [90.1, 120, 26],
      [120.1, 150, 19],
      [150.1, 180, 43],
      [180.1, 210, 20],
    ] as const;
    const failed = bounds.map(([left, right, count]): Counted => [letGo(left, right), count]);
    expectTop([...failed, [stillGood(210.1), 15356]], 1.272946, 7646.68, 0.002);
  });

  // The same library's second set, there quoted from a reliability-analysis reference: 2,681 units.
  it("has its top at the second interval-censored fit", () => {
    const bounds = [
      [0.1, 30, 2],
      [30, 60, 5],
      [60, 90, 1],
      [90, 120, 9],
      [120, 150, 6],
      [150, 180, 6],
      [180, 210, 5],
      [210, 240, 2],
    ] as const;
    const failed = bounds.map(([left, right, count]): Counted => [letGo(left, right), count]);
    expectTop([...failed, [stillGood(240), 2645]], 1.215, 8270.88, 0.004);
  });

  it("is a chance: what can be seen at one look adds up to one", () => {
    for (const beta of [0.8, 1, 2.4])
      expect(chanceOf(stillGood(300), beta, 500) + chanceOf(letGo(0, 300), beta, 500)).toBeCloseTo(1, 12);
  });
});
