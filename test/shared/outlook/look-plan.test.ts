import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { constantInterval } from "../../../shared/outlook/constant-interval.ts";
import { planLooks, planSafely } from "../../../shared/outlook/look-plan.ts";

const exponential = (rate: number) => (day: number) => Math.exp(-rate * day);

const costs = { look: 10, day: 2, hidden: 1 };

/** Older fixes are none that anybody has. */
const ONE_IN_A_MILLION = 1e-6;

describe("constant interval", () => {
  // Keller, Management Science 21 (1974), for the dense limit; the exact condition is set by differentiating the cost.
  it("meets e^(rx) − rx − 1 = r·look/day and its dense limit", () => {
    for (const rate of [1e-5, 1e-3, 0.02, 0.5, 3]) {
      const x = constantInterval(rate, costs);
      expect((Math.expm1(rate * x) - rate * x) / ((rate * costs.look) / costs.day)).toBeCloseTo(1, 6);
    }
    expect(constantInterval(1e-7, costs)).toBeCloseTo(Math.sqrt((2 * costs.look) / (1e-7 * costs.day)), -1);
  });
});

describe("plan of looks", () => {
  it("meets the closed form for an exponential life, whenever the last look was", () => {
    for (const median of [200, 700, 2500]) {
      const rate = Math.LN2 / median;
      const wanted = constantInterval(rate, costs);
      const plan = planLooks(exponential(rate), { horizon: 3000, interval: wanted }, costs);
      for (const from of [0, 90, 400, 1000])
        expect(Math.abs(plan.next(from) - from - wanted)).toBeLessThan(1 + 0.03 * wanted);
    }
  });

  it("meets it with failures that partly show themselves, where a day costs less", () => {
    const rate = Math.LN2 / 500;
    const shown = { ...costs, hidden: 0.4 };
    const wanted = constantInterval(rate, { ...costs, day: 0.8 });
    expect(
      Math.abs(
        planLooks(exponential(rate), { horizon: 3000, interval: wanted }, shown).next(200) - 200 - wanted,
      ),
    ).toBeLessThan(1 + 0.03 * wanted);
  });

  // Failure-finding interval of reliability-centred maintenance: unavailability 1 − (1 − e^−y)/y for y = x/M.
  it("spends the share of time unnoticed that the failure-finding formula gives", () => {
    const rate = 1 / 1500;
    const x = constantInterval(rate, costs);
    const wanted = 1 - -Math.expm1(-rate * x) / (rate * x);
    expect(
      planLooks(exponential(rate), { horizon: 20_000, interval: x / 2 }, costs).unnoticedShare() / wanted,
    ).toBeCloseTo(1, 1);
  });

  // RCM handbook quoted in the outside checks: 99 % availability and M = 10 years ask for 0.2 years, 73 days.
  it("comes to the handbook's interval when the price of a day is raised to its bound", () => {
    const rate = 1 / 3652.5;
    const plan = planSafely(
      exponential(rate),
      { horizon: 30_000, interval: 73 / 2 },
      { ...costs, day: 0.01 },
      0.01,
    );
    expect(plan.unnoticedShare()).toBeLessThanOrEqual(0.01);
    const days = plan.next(0);
    expect(days).toBeGreaterThan(60);
    expect(days).toBeLessThan(77);
  });

  it("costs less than every fixed round on a life that wears out", () => {
    const holding = (day: number) => Math.exp(-((day / 800) ** 2.5));
    const roundCost = (next: (day: number) => number) => {
      let [day, cost] = [0, 0];
      while (holding(day) > 1e-9) {
        const then = next(day);
        cost += costs.look * holding(day);
        for (let t = day; t < then; t++)
          cost += costs.day * (holding(day) - (holding(t) + holding(t + 1)) / 2);
        day = then;
      }
      return cost;
    };
    const planned = roundCost(planLooks(holding, { horizon: 3000, interval: 80 }, costs).next);
    for (let every = 20; every <= 400; every += 10)
      expect(planned).toBeLessThan(roundCost((day) => day + every));
  });

  it("never gives an earlier day for a later good look", () => {
    const life = fc.record({
      median: fc.double({ min: 60, max: 4000, noNaN: true }),
      shape: fc.double({ min: 0.5, max: 3.5, noNaN: true }),
      dud: fc.double({ min: 0, max: 0.4, noNaN: true }),
      hidden: fc.double({ min: 0.05, max: 1, noNaN: true }),
      look: fc.double({ min: 1, max: 40, noNaN: true }),
      day: fc.double({ min: 0.05, max: 20, noNaN: true }),
      off: fc.double({ min: 0.4, max: 2.5, noNaN: true }),
    });
    fc.assert(
      fc.property(
        life,
        fc.array(fc.integer({ min: 0, max: 1500 }), { minLength: 2, maxLength: 6 }),
        ({ off, ...one }, days) => {
          const interval = off * constantInterval(Math.LN2 / one.median, one);
          const holding = (day: number) =>
            (1 - one.dud) * Math.exp(-Math.LN2 * (day / one.median) ** one.shape) +
            one.dud * Math.exp(-day / 20);
          const plan = planLooks(holding, { horizon: 2600, interval }, one);
          const reached = days.filter((day) => holding(day) > ONE_IN_A_MILLION);
          const looks = reached.toSorted((a, b) => a - b).map(plan.next);
          return looks.every((look, index) => index === 0 || look >= (looks[index - 1] ?? 0));
        },
      ),
      { numRuns: 150 },
    );
  });
});
