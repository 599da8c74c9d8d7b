import { addedUp, type SignBytes, unpacked } from "./sign-bytes.ts";

/** Linear judges as they are kept. */
export type Learnt = {
  readonly of: readonly string[];
  /** What holds for each class without any sign. */
  readonly bias: readonly number[];
  /** The signs, one a line. */
  readonly signs: string;
  /** For each sign a signed byte for each class, in base 64. */
  readonly weights: string;
  /** What one in a byte weighs. */
  readonly unit: number;
};

/** Weights of signs for the classes asked for. */
export type Weighing = {
  /** Where in the list asked for each learnt class stands; -1 where it isn't asked for. */
  readonly place: readonly number[];
  readonly asked: number;
  readonly bias: readonly number[];
  readonly unit: number;
  readonly weights: SignBytes;
};

/** The weights in the order of `classes`; a class that was never met is as good as ruled out. */
export const weighing = (
  { of, bias, signs, weights, unit }: Learnt,
  classes: readonly string[],
): Weighing => ({
  place: of.map((name) => classes.indexOf(name)),
  asked: classes.length,
  bias,
  unit,
  weights: unpacked(signs, weights, of.length),
});
const NEVER = -9;

const sumsAt = ({ place, asked, bias, unit }: Weighing, steps: Int32Array): Float64Array => {
  const sums = new Float64Array(asked).fill(NEVER);
  for (let k = 0; k < place.length; k++) {
    const at = place[k] as number;
    if (at >= 0) sums[at] = (bias[k] as number) + (steps[k] as number) * unit;
  }
  return sums;
};

const sumsOf = (weights: Weighing, seen: readonly string[]): Float64Array =>
  sumsAt(weights, addedUp(weights.weights, seen));

/** How sure, from 0 to 1, of each class by itself, given the signs seen, one as often as it was seen (logistic regression). */
export const chances = (weights: Weighing, seen: readonly string[]): number[] =>
  Array.from(sumsOf(weights, seen), (sum) => 1 / (1 + Math.exp(-sum)));

/** Sums turned into parts of one whole (softmax). */
export const partsOf = (sums: readonly number[]): number[] => {
  const most = Math.max(...sums);
  const powers = sums.map((sum) => Math.exp(sum - most));
  const whole = powers.reduce((a, b) => a + b, 0);
  return powers.map((power) => power / whole);
};

/** How sure of each of the classes of which just one is right, adding up to 1, given what the signs' weights add up to. */
export const partsAt = (weights: Weighing, steps: Int32Array): number[] =>
  partsOf([...sumsAt(weights, steps)]);

/** How sure of each of the classes of which just one is right, adding up to 1, given the signs seen (multinomial logit). */
export const parts = (weights: Weighing, seen: readonly string[]): number[] =>
  partsOf([...sumsOf(weights, seen)]);

/** How sure of each of several choices, adding up to 1, given the signs of each (conditional logit). */
export const shares = (weights: Weighing, seen: readonly (readonly string[])[]): number[] =>
  partsOf(seen.map((signs) => sumsOf(weights, signs)[0] ?? 0));
