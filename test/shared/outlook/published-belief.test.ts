import gamma from "@stdlib/stats-base-dists-gamma";
import { describe, expect, it } from "vitest";
import {
  cellsOf,
  DUD_FACTORS,
  evidenceOf,
  gather,
  LOG_SCALES,
  SHAPES,
  type Weights,
  weigh,
} from "../../../shared/outlook/grid.ts";
import { letGo, stillGood } from "../../../shared/outlook/life.ts";
import { ageAt, outlives, predict } from "../../../shared/outlook/prediction.ts";
import type { FixKind } from "../../../shared/outlook/priors.ts";

const kindOf = (medianDays: number): FixKind => ({
  id: "machine",
  say: "machine",
  actions: ["repair"],
  medianDays,
  spread: 1,
  risk: "steady",
  dud: 0,
  dudDays: 1,
  why: "",
});

/** A gamma prior on the failure rate, laid on the cells of constant risk; all others are ruled out. */
const gammaPrior = (kind: FixKind, shape: number, rate: number): Weights => {
  const weights: number[] = [];
  for (const logScale of LOG_SCALES)
    for (const form of SHAPES) {
      const failureRate = Math.LN2 / (kind.medianDays * Math.exp(logScale));
      const weight = form === 1 ? failureRate ** shape * Math.exp(-rate * failureRate) : 0;
      weights.push(...DUD_FACTORS.map(() => weight));
    }
  return Float64Array.from(weights);
};

/** Chance to outlive t when the rate is gamma distributed. */
const predictive = (shape: number, rate: number, t: number) => (rate / (rate + t)) ** shape;

// NIST/SEMATECH e-Handbook 8.4.6: prior a = 2, b = 1400; 2 failures in 1909 h give a = 4, b = 3309 (rule read, the
// example's figures from memory).
describe("learning a rate", () => {
  const kind = kindOf(600);
  const width = 0.5;
  const learned = gammaPrior(kind, 2, 1400);
  for (const at of [700, 900])
    weigh(learned, cellsOf(kind, evidenceOf(kind, letGo(at - width / 2, at + width / 2))));
  weigh(learned, cellsOf(kind, evidenceOf(kind, stillGood(1909 - 1600))));

  it("gives the handbook's posterior", () => {
    const prediction = predict(kind, gather(kind, learned));
    for (const t of [50, 150, 300, 600, 1000, 2000])
      expect(outlives(prediction, t)).toBeCloseTo(predictive(4, 3309, t), 2.5);
  });

  it("starts from the handbook's prior", () => {
    const prediction = predict(kind, gather(kind, gammaPrior(kind, 2, 1400)));
    for (const t of [50, 300, 1000]) expect(outlives(prediction, t)).toBeCloseTo(predictive(2, 1400, t), 2);
  });

  it("finds the age of a wanted chance: S(t) = (b/(b+t))^a solved for t", () => {
    const prediction = predict(kind, gather(kind, learned));
    expect(ageAt(prediction, 0, 0.9) / 88.317528).toBeCloseTo(1, 1.5);
    expect(ageAt(prediction, 0, 0.95) / 42.705606).toBeCloseTo(1, 1.5);
  });

  // Same chapter: a posterior chance of 0.80 that the mean time between failures is above 600 h.
  it("puts the handbook's weight on long lives", () => {
    let [above, all] = [0, 0];
    learned.forEach((weight, cell) => {
      const scale = LOG_SCALES[Math.floor(cell / DUD_FACTORS.length / SHAPES.length)] ?? 0;
      const mean = (kind.medianDays * Math.exp(scale)) / Math.LN2;
      all += weight;
      if (mean > 600) above += weight;
    });
    expect(gamma.cdf(1 / 600, 4, 3309)).toBeCloseTo(0.8, 3);
    expect(above / all).toBeCloseTo(0.8, 0.9);
  });
});

describe("predicting", () => {
  it("agrees with adding up the cells one by one", () => {
    const kind = { ...kindOf(1000), dud: 0.1, dudDays: 20 };
    const weights = gammaPrior(kind, 3, 2000);
    const prediction = predict(kind, gather(kind, weights));
    for (const age of [1, 7, 33, 250, 1111, 4000]) {
      let [held, all] = [0, 0];
      weights.forEach((weight, cell) => {
        const life = Math.floor(cell / DUD_FACTORS.length);
        const median = 1000 * Math.exp(LOG_SCALES[Math.floor(life / SHAPES.length)] ?? 0);
        const share = 0.1 * (DUD_FACTORS[cell % DUD_FACTORS.length] ?? 0);
        const sound = Math.exp(-Math.LN2 * (age / median) ** (SHAPES[life % SHAPES.length] ?? 1));
        held += weight * ((1 - share) * sound + share * Math.exp(-age / 20));
        all += weight;
      });
      expect(Math.abs(outlives(prediction, age) - held / all)).toBeLessThan(0.002);
    }
  });
});
