import { describe, expect, it } from "vitest";
import { layered, layering } from "../../../../nlp/read/layered.ts";
import { chances, parts, shares, weighing } from "../../../../nlp/read/linear.ts";
import { fitLayers } from "./layered.ts";
import { type Example, fitClasses, fitShares, regress } from "./linear.ts";
import { meanOf, meanOfLayers } from "./means.ts";

const often = <T>(all: readonly T[], times: number): T[] => Array.from({ length: times }, () => all).flat();

const PLAIN: readonly Example[] = often(
  [
    { signs: ["leak", "pump"], right: "fault" },
    { signs: ["sealed", "pump"], right: "repair" },
    { signs: ["lunch", "pump"], right: "" },
  ],
  60,
);
const CLASSES = ["fault", "repair", ""] as const;

/** One or the other, and not both: no sum of weights tells it. */
const EITHER: readonly Example[] = often(
  [
    { signs: ["a"], right: "yes" },
    { signs: ["b"], right: "yes" },
    { signs: ["a", "b"], right: "no" },
    { signs: [], right: "no" },
  ],
  300,
);
const ANSWERS = ["yes", "no"] as const;
const PACE = { hidden: 16, leftOut: 0, signsLeftOut: 0, rounds: 40, step: 0.02 };

const likeliest = (classes: readonly string[], rated: readonly number[]): string | undefined =>
  classes[rated.indexOf(Math.max(...rated))];

describe("what is learnt from examples", () => {
  it("tells classes apart by their signs, and none of them by its own", () => {
    const weights = weighing(fitClasses(PLAIN, CLASSES), CLASSES);
    for (const { signs, right } of PLAIN.slice(0, 3)) {
      const rated = parts(weights, signs);
      expect(likeliest(CLASSES, rated)).toBe(right);
      expect(rated.reduce((a, b) => a + b)).toBeCloseTo(1);
    }
  });

  it("rates each class by itself when asked to", () => {
    const weights = weighing(regress(PLAIN, ["repair", "fault"]), ["fault", "repair"]);
    const [fault = 0, repair = 0] = chances(weights, ["leak", "pump"]);
    expect(fault).toBeGreaterThan(0.5);
    expect(repair).toBeLessThan(0.5);
    expect(chances(weights, ["lunch", "pump"]).every((each) => each < 0.5)).toBe(true);
  });

  it("all but rules out a class that was never met", () => {
    const learnt = fitClasses(PLAIN, CLASSES);
    const [never = 1] = parts(weighing(learnt, ["todo", ...CLASSES]), ["leak", "pump"]);
    expect(never).toBeLessThan(0.01);
  });

  it("chooses among several by the signs of each", () => {
    const choices = often([{ signs: [["near"], ["far"]], right: [true, false] }], 40);
    const [near = 0] = shares(weighing(fitShares(choices), ["right"]), [["near"], ["far"]]);
    expect(near).toBeGreaterThan(0.8);
  });

  it("tells what only goes together apart, with a layer between", () => {
    const plain = weighing(fitClasses(EITHER, ANSWERS), ANSWERS);
    const deep = layering(fitLayers(EITHER, ANSWERS, PACE), ANSWERS);
    const rightBy = (rate: (signs: readonly string[]) => readonly number[]): number =>
      EITHER.slice(0, 4).filter(({ signs, right }) => likeliest(ANSWERS, rate(signs)) === right).length;
    expect(rightBy((signs) => parts(plain, signs))).toBeLessThan(4);
    expect(rightBy((signs) => layered(deep, signs))).toBe(4);
  });

  it("gives nothing to a class that the layers never met, and comes out alike each time", () => {
    const learnt = fitLayers(EITHER, ANSWERS, PACE);
    expect(layered(layering(learnt, ["never", ...ANSWERS]), ["a"])[0]).toBe(0);
    expect(fitLayers(EITHER, ANSWERS, PACE)).toEqual(learnt);
  });
});

describe("two judges as one", () => {
  const SIGNS = [["leak", "pump"], ["sealed"], ["lunch", "pump"], ["never met"]];
  const logOf = (of: readonly string[], rated: readonly number[]): number =>
    Math.log((rated[of.indexOf("repair")] ?? 0) / (rated[of.indexOf("fault")] ?? 0));

  it("weigh as both do on the mean, whatever the order of their classes", () => {
    const one = fitClasses(PLAIN, CLASSES);
    const other = fitClasses(PLAIN.slice(0, 90), [...CLASSES].reverse(), { rounds: 2 });
    const both = weighing(meanOf(one, other), CLASSES);
    for (const signs of SIGNS) {
      const [a, b] = [one, other].map((each) => logOf(CLASSES, parts(weighing(each, CLASSES), signs)));
      expect(logOf(CLASSES, parts(both, signs))).toBeCloseTo(((a ?? 0) + (b ?? 0)) / 2, 0);
    }
  });

  it("do so with layers between, of whatever width", () => {
    const one = fitLayers(PLAIN, CLASSES, PACE);
    const other = fitLayers(PLAIN.slice(0, 90), [...CLASSES].reverse(), { ...PACE, hidden: 8, seed: 2 });
    const both = layering(meanOfLayers(one, other), CLASSES);
    for (const signs of SIGNS) {
      const [a, b] = [one, other].map((each) => logOf(CLASSES, layered(layering(each, CLASSES), signs)));
      expect(logOf(CLASSES, layered(both, signs))).toBeCloseTo(((a ?? 0) + (b ?? 0)) / 2, 0);
    }
  });

  it("are none where they were learnt of other classes", () => {
    expect(() => meanOf(fitClasses(PLAIN, CLASSES), regress(PLAIN, ["repair"]))).toThrow(RangeError);
  });
});
