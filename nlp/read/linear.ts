/**
 * Linear judges as they are kept: the classes, what holds for each without any sign, and for each sign pairs of
 * class number and weight, one after the other. Weights are hundredths.
 */
export type Learnt = {
  readonly of: readonly string[];
  readonly bias: readonly number[];
  readonly signs: Readonly<Record<string, readonly number[]>>;
};

/** Weights by sign: pairs of class number and weight, one after the other. */
export type Weighing = {
  readonly bias: Float64Array;
  readonly signs: ReadonlyMap<string, readonly number[]>;
};

/** The weights in the order of `classes`; a class that was never met is as good as ruled out. */
export const weighing = ({ of, bias, signs }: Learnt, classes: readonly string[]): Weighing => {
  const at = of.map((name) => classes.indexOf(name));
  const start = new Float64Array(classes.length).fill(NEVER);
  for (const [index, value] of bias.entries()) start[at[index] ?? 0] = value / HUNDREDTHS;
  const rows = Object.entries(signs).map(([sign, pairs]): [string, number[]] => [
    sign,
    pairs.map((value, place) => (place % 2 === 0 ? (at[value] ?? 0) : value / HUNDREDTHS)),
  ]);
  return { bias: start, signs: new Map(rows) };
};
const NEVER = -9;
const HUNDREDTHS = 100;

const sumsOf = ({ bias, signs }: Weighing, seen: readonly string[]): Float64Array => {
  const sums = Float64Array.from(bias);
  for (const sign of seen) {
    const pairs = signs.get(sign);
    if (pairs === undefined) continue;
    for (let pair = 0; pair < pairs.length; pair += 2) {
      const at = pairs[pair] as number;
      sums[at] = (sums[at] as number) + (pairs[pair + 1] as number);
    }
  }
  return sums;
};

/** How sure, from 0 to 1, of each class by itself, given the signs seen, one as often as it was seen (logistic regression). */
export const chances = (weights: Weighing, seen: readonly string[]): number[] =>
  Array.from(sumsOf(weights, seen), (sum) => 1 / (1 + Math.exp(-sum)));

/** How sure of each of several choices, adding up to 1, given the signs of each (conditional logit). */
export const shares = (weights: Weighing, seen: readonly (readonly string[])[]): number[] => {
  const sums = seen.map((signs) => sumsOf(weights, signs)[0] ?? 0);
  const most = Math.max(...sums);
  const powers = sums.map((sum) => Math.exp(sum - most));
  const whole = powers.reduce((a, b) => a + b, 0);
  return powers.map((power) => power / whole);
};
