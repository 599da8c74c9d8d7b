import type { Learnt } from "../../../../nlp/read/linear.ts";

/** One decision as it was met: the signs seen, and which class was right; "" for none of them. */
export type Example = { readonly signs: readonly string[]; readonly right: string };
/** One choice among several as it was met: the signs of each, and which are right. */
export type Choice = { readonly signs: readonly (readonly string[])[]; readonly right: readonly boolean[] };

/** Strength of the pull towards zero (L2). */
const PULL = 6;
/** Signs met less often are left out. */
const LEAST = 3;
const ROUNDS = 80;
const FIRST_STEP = 0.12;
const LAST_STEP = 0.01;
/** Weights smaller than this are not kept. */
const SMALLEST = 0.06;

const indexOf = (all: Iterable<readonly string[]>): Map<string, number> => {
  const counts = new Map<string, number>();
  for (const signs of all) for (const sign of new Set(signs)) counts.set(sign, (counts.get(sign) ?? 0) + 1);
  const kept = [...counts].filter(([, count]) => count >= LEAST).map(([sign]) => sign);
  return new Map(kept.map((sign, at) => [sign, at]));
};

const coded = (signs: readonly string[], index: ReadonlyMap<string, number>): Int32Array =>
  Int32Array.from(signs.flatMap((sign) => index.get(sign) ?? []));

/** Full-batch Adam (Kingma and Ba, arXiv 1412.6980) from zero with shrinking steps; `slopes` fills in the gradient. */
const descend = (
  size: number,
  count: number,
  slopes: (weights: Float64Array, slope: Float64Array) => void,
): Float64Array => {
  const weights = new Float64Array(size);
  const [mean, square, slope] = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
  for (let round = 1; round <= ROUNDS; round++) {
    slopes(weights, slope);
    const step = FIRST_STEP * (1 - round / (ROUNDS + 1)) + LAST_STEP;
    const [fadeMean, fadeSquare] = [1 - 0.9 ** round, 1 - 0.999 ** round];
    for (let at = 0; at < size; at++) {
      const s = (slope[at] as number) / count;
      mean[at] = 0.9 * (mean[at] as number) + 0.1 * s;
      square[at] = 0.999 * (square[at] as number) + 0.001 * s * s;
      weights[at] =
        (weights[at] as number) -
        (step * (mean[at] as number)) / fadeMean / (Math.sqrt((square[at] as number) / fadeSquare) + 1e-8);
    }
  }
  return weights;
};

const tableOf = (
  of: readonly string[],
  index: ReadonlyMap<string, number>,
  weights: Float64Array,
): Learnt => {
  const short = (value: number): number => Math.round(value * 100) / 100;
  const signs = [...index].flatMap(([sign, at]): [string, number[]][] => {
    const pairs = of.flatMap((_, k) => {
      const weight = weights[at * of.length + k] ?? 0;
      return Math.abs(weight) < SMALLEST ? [] : [k, short(weight)];
    });
    return pairs.length === 0 ? [] : [[sign, pairs]];
  });
  const bias = of.map((_, k) => short(weights[index.size * of.length + k] ?? 0));
  return { of: [...of], bias, signs: Object.fromEntries(signs) };
};

/** One logistic regression with L2 for each class against the rest; deterministic. */
export const regress = (examples: readonly Example[], of: readonly string[]): Learnt => {
  const index = indexOf(examples.map((each) => each.signs));
  const classes = of.length;
  const bias = index.size * classes;
  const rows = examples.map(({ signs }) => coded(signs, index));
  const right = examples.map((each) => of.indexOf(each.right));
  const sums = new Float64Array(classes);
  const weights = descend(bias + classes, examples.length, (now, slope) => {
    for (let at = 0; at < bias; at++) slope[at] = PULL * (now[at] as number);
    slope.fill(0, bias);
    for (const [at, row] of rows.entries()) {
      for (let k = 0; k < classes; k++) sums[k] = now[bias + k] as number;
      for (const sign of row)
        for (let k = 0; k < classes; k++) sums[k] = (sums[k] as number) + (now[sign * classes + k] as number);
      for (let k = 0; k < classes; k++) {
        const miss = 1 / (1 + Math.exp(-(sums[k] as number))) - (right[at] === k ? 1 : 0);
        sums[k] = miss;
        slope[bias + k] = (slope[bias + k] as number) + miss;
      }
      for (const sign of row)
        for (let k = 0; k < classes; k++) {
          const place = sign * classes + k;
          slope[place] = (slope[place] as number) + (sums[k] as number);
        }
    }
  });
  return tableOf(of, index, weights);
};

/** Conditional logit with L2: raises the share of the right ones of each choice; deterministic. */
export const fitShares = (choices: readonly Choice[]): Learnt => {
  const index = indexOf(choices.flatMap((choice) => choice.signs));
  const rows = choices.map((choice) => choice.signs.map((signs) => coded(signs, index)));
  const weights = descend(index.size, choices.length, (now, slope) => {
    for (let at = 0; at < index.size; at++) slope[at] = PULL * (now[at] as number);
    for (const [row, options] of rows.entries()) {
      const sums = options.map((signs) => signs.reduce((sum, at) => sum + (now[at] as number), 0));
      const most = Math.max(...sums);
      const powers = sums.map((sum) => Math.exp(sum - most));
      const whole = powers.reduce((a, b) => a + b, 0);
      const right = choices[row]?.right ?? [];
      const rights = powers.reduce((sum, power, at) => sum + (right[at] === true ? power : 0), 0);
      for (const [at, signs] of options.entries()) {
        const power = powers[at] ?? 0;
        const pull = power / whole - (right[at] === true ? power / rights : 0);
        for (const sign of signs) slope[sign] = (slope[sign] as number) + pull;
      }
    }
  });
  return tableOf(["right"], index, weights);
};
