import { describe, expect, it } from "vitest";
import { believe, noLessons } from "../../../shared/outlook/belief.ts";
import { evidenceOf } from "../../../shared/outlook/grid.ts";
import { letGo, type Observation, stillGood } from "../../../shared/outlook/life.ts";
import { outlives } from "../../../shared/outlook/prediction.ts";
import type { FixKind } from "../../../shared/outlook/priors.ts";
import { DEFAULT_SETTINGS } from "../../../shared/outlook/settings.ts";

/** A kind of which next to nothing is known. */
const vague = (medianDays: number): FixKind => ({
  id: "vague",
  say: "vague",
  actions: ["repair"],
  medianDays,
  spread: 3,
  risk: "steady",
  dud: 0,
  dudDays: 1,
  why: "",
});

/** "6" is a failure at 6, "6+" still good at 6. */
const exact = (list: string): Observation[] =>
  list.split(" ").map((item) => {
    const at = Number.parseInt(item, 10);
    return item.endsWith("+") ? stillGood(at) : letGo(at - 0.01, at + 0.01);
  });

/** "7-16" is a failure after 7 and by 16, "17-" still good at 17. */
const intervals = (list: string): Observation[] =>
  list.split(" ").map((item) => {
    const [left, right] = item.split("-");
    return right === "" ? stillGood(Number(left)) : letGo(Number(left), Number(right));
  });

/** Distances between what is learned and a published curve of steps, each taken halfway down its step. */
const distances = (seen: readonly Observation[], curve: readonly (readonly [number, number])[]): number[] => {
  const kind = vague(15);
  const learned = believe(
    noLessons(kind, DEFAULT_SETTINGS),
    null,
    seen.map((one) => evidenceOf(kind, one)),
  );
  return curve.map(([at, after], step) =>
    Math.abs(outlives(learned, at) - (after + (curve[step - 1]?.[1] ?? 1)) / 2),
  );
};

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** What a Turnbull estimate leaves after each of its masses. */
const leaving = (masses: readonly (readonly [number, number])[]): [number, number][] => {
  let left = 1;
  return masses.map(([at, mass]) => {
    left -= mass;
    return [at, left];
  });
};

// Lives are one Weibull family here and free in the published estimates, so that they come near, not to the digit.
describe("what is learned from failures follows published curves", () => {
  // Freireich et al., Blood 21 (1963): remission in weeks, Kaplan-Meier as printed by R's survival.
  it("Kaplan-Meier, treated: nine failures and twelve still good", () => {
    const far = distances(exact("6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+"), [
      [6, 0.857],
      [7, 0.807],
      [10, 0.753],
      [13, 0.69],
      [16, 0.627],
      [22, 0.538],
      [23, 0.448],
    ]);
    expect(mean(far)).toBeLessThan(0.05);
    expect(Math.max(...far)).toBeLessThan(0.1);
  });

  it("Kaplan-Meier, placebo: all failed", () => {
    const far = distances(exact("1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23"), [
      [1, 0.9048],
      [2, 0.8095],
      [3, 0.7619],
      [4, 0.6667],
      [5, 0.5714],
      [8, 0.381],
      [11, 0.2857],
      [12, 0.1905],
      [15, 0.1429],
      [17, 0.0952],
      [22, 0.0476],
      [23, 0],
    ]);
    expect(mean(far)).toBeLessThan(0.05);
    expect(Math.max(...far)).toBeLessThan(0.1);
  });

  // Finkelstein and Wolfe, Biometrics 41 (1985): found at visits only; Turnbull's estimate as in Fay and Shaw, Journal
  // of Statistical Software 36(2), 2010.
  it("Turnbull, radiotherapy: failures known only to lie between two visits", () => {
    const seen = intervals(
      "45- 6-10 0-7 46- 46- 7-16 17- 7-14 37-44 0-8 4-11 15- 11-15 22- 46- 46- 25-37 46- 26-40 46- 27-34 36-44 46- 36-48 37- 40- 17-25 46- 11-18 38- 5-12 37- 0-5 18- 24- 36- 5-11 19-35 17-25 24- 32- 33- 19-26 37- 34- 36-",
    );
    const far = distances(
      seen,
      leaving([
        [5, 0.0463],
        [7, 0.0334],
        [8, 0.0887],
        [12, 0.0708],
        [25, 0.0926],
        [34, 0.0818],
        [40, 0.1209],
        [48, 0.4656],
      ]).slice(0, -1),
    );
    expect(mean(far)).toBeLessThan(0.06);
    expect(Math.max(...far)).toBeLessThan(0.12);
  });

  it("Turnbull, radiotherapy and chemotherapy", () => {
    const seen = intervals(
      "8-12 0-22 24-31 17-27 17-23 24-30 16-24 13- 11-13 16-20 18-25 17-26 32- 23- 44-48 14-17 0-5 5-8 12-20 11- 33-40 31- 13-39 19-32 34- 13- 16-24 35- 15-22 11-17 22-32 10-35 30-34 13- 10-17 8-21 4-9 11- 14-19 4-8 34- 30-36 18-24 16-60 35-39 21- 11-20 48-",
    );
    const far = distances(
      seen,
      leaving([
        [5, 0.0433],
        [8, 0.0433],
        [12, 0.0692],
        [17, 0.1454],
        [19, 0.1411],
        [20, 0.1157],
        [25, 0.0999],
        [31, 0.0709],
        [36, 0.1608],
        [48, 0.0552],
        [60, 0.0552],
      ]),
    );
    expect(mean(far)).toBeLessThan(0.08);
  });
});
