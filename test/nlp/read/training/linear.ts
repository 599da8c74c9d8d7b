import type { Learnt } from "../../../../nlp/read/linear.ts";

/** One decision as it was met: the signs seen, and which class was right; "" for none of them. */
export type Example = { readonly signs: readonly string[]; readonly right: string };
/** One choice among several as it was met: the signs of each, and which are right. */
export type Choice = { readonly signs: readonly (readonly string[])[]; readonly right: readonly boolean[] };

/** How a judge is learnt. */
export type Pace = {
  /** Strength of the pull towards zero (L2). */
  readonly pull: number;
  /** Signs met less often are left out. */
  readonly least: number;
  /** Weights smaller than this are not kept. */
  readonly smallest: number;
  readonly rounds: number;
  readonly step: number;
};
const PACE: Pace = { pull: 2, least: 3, smallest: 0.06, rounds: 8, step: 0.1 };

/** Signs met often enough, numbered, with how often each was met. */
export type Index = { readonly numbers: ReadonlyMap<string, number>; readonly met: Int32Array };

export const indexOf = (all: Iterable<readonly string[]>, least: number): Index => {
  const counts = new Map<string, number>();
  for (const signs of all) for (const sign of new Set(signs)) counts.set(sign, (counts.get(sign) ?? 0) + 1);
  const kept = [...counts].filter(([, count]) => count >= least);
  return {
    numbers: new Map(kept.map(([sign], at) => [sign, at])),
    met: Int32Array.from(kept, ([, count]) => count),
  };
};

export const coded = (signs: readonly string[], { numbers }: Index): Int32Array =>
  Int32Array.from(signs.flatMap((sign) => numbers.get(sign) ?? []));

/** The numbers below `count` in an order that is mixed anew, and always alike, each round (xorshift, Fisher and Yates). */
const mixed = function* (count: number, rounds: number): Generator<readonly [round: number, at: number]> {
  const order = Int32Array.from({ length: count }, (_, at) => at);
  let state = 2463534242;
  for (let round = 0; round < rounds; round++) {
    for (let last = count - 1; last > 0; last--) {
      state ^= state << 13;
      state ^= state >>> 17;
      state ^= state << 5;
      const other = (state >>> 0) % (last + 1);
      [order[last], order[other]] = [order[other] as number, order[last] as number];
    }
    for (const at of order) yield [round, at];
  }
};

/** Weights that each take smaller steps the more they were moved (AdaGrad; Duchi, Hazan and Singer 2011). */
class Weights {
  readonly values: Float64Array;
  readonly #moved: Float64Array;

  constructor(size: number) {
    this.values = new Float64Array(size);
    this.#moved = new Float64Array(size).fill(FIRST_MOVED);
  }

  move(at: number, slope: number, step: number): void {
    const moved = (this.#moved[at] as number) + slope * slope;
    this.#moved[at] = moved;
    this.values[at] = (this.values[at] as number) - (step * slope) / Math.sqrt(moved);
  }
}
const FIRST_MOVED = 0.01;

const BYTE = 127;
const HUNDREDTHS = 100;

const tableOf = (
  of: readonly string[],
  { numbers }: Index,
  weights: Float64Array,
  smallest: number,
): Learnt => {
  const classes = of.length;
  const rowOf = (at: number): Float64Array => weights.subarray(at * classes, (at + 1) * classes);
  const kept = [...numbers].filter(([, at]) => rowOf(at).some((weight) => Math.abs(weight) >= smallest));
  const most = kept.reduce((top, [, at]) => rowOf(at).reduce((a, b) => Math.max(a, Math.abs(b)), top), 0);
  const unit = Math.ceil((most / BYTE) * BYTE * HUNDREDTHS) / BYTE / HUNDREDTHS;
  const bytes = Int8Array.from(
    kept.flatMap(([, at]) => Array.from(rowOf(at), (weight) => Math.round(weight / unit))),
  );
  return {
    of: [...of],
    bias: of.map((_, k) => Math.round((weights[numbers.size * classes + k] ?? 0) * HUNDREDTHS) / HUNDREDTHS),
    signs: kept.map(([sign]) => sign).join("\n"),
    weights: Buffer.from(bytes.buffer).toString("base64"),
    unit,
  };
};

/** Turns the sums of the classes into how likely each is, in place. */
type Link = (sums: Float64Array) => void;

const eachByItself: Link = (sums) => {
  for (let k = 0; k < sums.length; k++) sums[k] = 1 / (1 + Math.exp(-(sums[k] as number)));
};

export const oneOfAll: Link = (sums) => {
  const most = sums.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  let whole = 0;
  for (let k = 0; k < sums.length; k++) whole += sums[k] = Math.exp((sums[k] as number) - most);
  for (let k = 0; k < sums.length; k++) sums[k] = (sums[k] as number) / whole;
};

const learntBy = (
  examples: readonly Example[],
  of: readonly string[],
  given: Partial<Pace>,
  link: Link,
): Learnt => {
  const { pull, least, smallest, rounds, step } = { ...PACE, ...given };
  const index = indexOf(
    examples.map((each) => each.signs),
    least,
  );
  const classes = of.length;
  const bias = index.met.length * classes;
  const rows = examples.map(({ signs }) => coded(signs, index));
  const right = examples.map((each) => of.indexOf(each.right));
  const misses = new Float64Array(classes);
  const weights = new Weights(bias + classes);
  const { values } = weights;
  for (const [round, at] of mixed(rows.length, rounds)) {
    const row = rows[at] ?? new Int32Array();
    const pace = step * (1 - round / rounds);
    for (let k = 0; k < classes; k++) misses[k] = values[bias + k] as number;
    for (const sign of row)
      for (let k = 0; k < classes; k++)
        misses[k] = (misses[k] as number) + (values[sign * classes + k] as number);
    link(misses);
    for (let k = 0; k < classes; k++) {
      const miss = (misses[k] as number) - (right[at] === k ? 1 : 0);
      misses[k] = miss;
      weights.move(bias + k, miss, pace);
    }
    for (const sign of row) {
      const pulled = pull / (index.met[sign] as number);
      for (let k = 0; k < classes; k++) {
        const place = sign * classes + k;
        weights.move(place, (misses[k] as number) + pulled * (values[place] as number), pace);
      }
    }
  }
  return tableOf(of, index, values, smallest);
};

/** One logistic regression with L2 for each class against the rest; deterministic. */
export const regress = (
  examples: readonly Example[],
  of: readonly string[],
  pace: Partial<Pace> = {},
): Learnt => learntBy(examples, of, pace, eachByItself);

/** Multinomial logistic regression with L2: just one class is right, "" among them where it may be none; deterministic. */
export const fitClasses = (
  examples: readonly Example[],
  of: readonly string[],
  pace: Partial<Pace> = {},
): Learnt => learntBy(examples, of, { step: 0.05, ...pace }, oneOfAll);

const sumOf = (row: Int32Array, values: Float64Array): number => {
  let sum = 0;
  for (const sign of row) sum += values[sign] as number;
  return sum;
};

/** Conditional logit with L2: raises the share of the right ones of each choice; deterministic. */
export const fitShares = (choices: readonly Choice[], pace: Partial<Pace> = {}): Learnt => {
  const { pull, least, smallest, rounds, step } = { ...PACE, ...pace };
  const index = indexOf(
    choices.flatMap((choice) => choice.signs),
    least,
  );
  const rows = choices.map((choice) => choice.signs.map((signs) => coded(signs, index)));
  const weights = new Weights(index.met.length);
  for (const [round, at] of mixed(rows.length, rounds)) {
    const options = rows[at] ?? [];
    const right = choices[at]?.right ?? [];
    const sums = options.map((row) => sumOf(row, weights.values));
    const most = Math.max(...sums);
    const powers = sums.map((sum) => Math.exp(sum - most));
    const whole = powers.reduce((a, b) => a + b, 0);
    const rights = powers.reduce((sum, power, option) => sum + (right[option] === true ? power : 0), 0);
    for (const [option, row] of options.entries()) {
      const power = powers[option] ?? 0;
      const slope = power / whole - (right[option] === true ? power / rights : 0);
      for (const sign of row) {
        const pulled = (pull / (index.met[sign] as number)) * (weights.values[sign] as number);
        weights.move(sign, slope + pulled, step * (1 - round / rounds));
      }
    }
  }
  return tableOf(["right"], index, weights.values, smallest);
};
