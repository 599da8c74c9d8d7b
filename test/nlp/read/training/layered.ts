import type { LearntLayers } from "../../../../nlp/read/layered.ts";
import { coded, type Example, indexOf, oneOfAll } from "./linear.ts";

/** How layers are learnt. */
export type LayersPace = {
  readonly hidden: number;
  /** Signs met less often are left out. */
  readonly least: number;
  /** The part of hidden units, and of signs, that is left out at random of each example (dropout; Srivastava et al. 2014). */
  readonly leftOut: number;
  readonly signsLeftOut: number;
  readonly rounds: number;
  readonly step: number;
  /** Which of many chances to start from; what is learnt differs a little. */
  readonly seed: number;
};
const PACE: LayersPace = {
  hidden: 64,
  least: 3,
  leftOut: 0.5,
  signsLeftOut: 0.1,
  rounds: 5,
  step: 0.006,
  seed: 1,
};

const FIRST_CHANCE = 2463534242;

/** Examples that are learnt from at once. */
const AT_ONCE = 256;

/** Numbers from 0 up to 1 that are always alike (xorshift). */
const chanceFrom = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
};

const MEMORY = 0.999;
const TINY = 1e-8;

/** Values that move against their slopes, less the larger these were of late (Adam without its mean; Kingma and Ba 2015). */
class Moved {
  readonly values: Float32Array;
  readonly slopes: Float32Array;
  readonly #square: Float32Array;
  readonly #width: number;

  constructor(rows: number, width: number, start: () => number) {
    this.#width = width;
    this.values = Float32Array.from({ length: rows * width }, start);
    this.slopes = new Float32Array(rows * width);
    this.#square = new Float32Array(rows * width);
  }

  /** Moves the rows named, and forgets their slopes; `time` counts from 1. */
  move(rows: Iterable<number>, step: number, time: number): void {
    const pace = step * Math.sqrt(1 - MEMORY ** time);
    const { values, slopes } = this;
    for (const row of rows)
      for (let at = row * this.#width; at < (row + 1) * this.#width; at++) {
        const slope = slopes[at] as number;
        const square = MEMORY * (this.#square[at] as number) + (1 - MEMORY) * slope * slope;
        this.#square[at] = square;
        values[at] = (values[at] as number) - (pace * slope) / (Math.sqrt(square) + TINY);
        slopes[at] = 0;
      }
  }
}

const BYTE = 127;
const HUNDREDTHS = 100;
const rounded = (value: number): number =>
  Math.round(value * HUNDREDTHS * HUNDREDTHS) / HUNDREDTHS / HUNDREDTHS;

/** One hidden layer over the sum of the signs' vectors; just one class is right, "" among them where it may be none. Deterministic. */
export const fitLayers = (
  examples: readonly Example[],
  of: readonly string[],
  given: Partial<LayersPace> = {},
): LearntLayers => {
  const { hidden, least, leftOut, signsLeftOut, rounds, step, seed } = { ...PACE, ...given };
  const chance = chanceFrom(FIRST_CHANCE * seed);
  const index = indexOf(
    examples.map((each) => each.signs),
    least,
  );
  const signs = index.met.length;
  const classes = of.length;
  const rows = examples.map((each) => coded(each.signs, index));
  const right = examples.map((each) => of.indexOf(each.right));
  const inner = new Moved(signs + 1, hidden, () => (chance() - 0.5) * 0.1);
  const outer = new Moved(hidden + 1, classes, () => (chance() - 0.5) * 0.3);
  const all = Array.from({ length: hidden + 1 }, (_, j) => j);
  const [held, back, sums] = [new Float64Array(hidden), new Float64Array(hidden), new Float64Array(classes)];

  const learnFrom = (at: number, met: Set<number>): void => {
    const row = (rows[at] as Int32Array).filter(() => chance() >= signsLeftOut);
    for (let j = 0; j < hidden; j++) held[j] = inner.values[signs * hidden + j] as number;
    for (const sign of row)
      for (let j = 0; j < hidden; j++)
        held[j] = (held[j] as number) + (inner.values[sign * hidden + j] as number);
    for (let k = 0; k < classes; k++) sums[k] = outer.values[hidden * classes + k] as number;
    for (let j = 0; j < hidden; j++) {
      const open = (held[j] as number) > 0 && chance() >= leftOut;
      held[j] = open ? (held[j] as number) / (1 - leftOut) : 0;
      if (open)
        for (let k = 0; k < classes; k++)
          sums[k] = (sums[k] as number) + (held[j] as number) * (outer.values[j * classes + k] as number);
    }
    oneOfAll(sums);
    for (let k = 0; k < classes; k++) {
      sums[k] = ((sums[k] as number) - (right[at] === k ? 1 : 0)) / AT_ONCE;
      outer.slopes[hidden * classes + k] =
        (outer.slopes[hidden * classes + k] as number) + (sums[k] as number);
    }
    for (let j = 0; j < hidden; j++) {
      back[j] = 0;
      if (held[j] === 0) continue;
      let slope = 0;
      for (let k = 0; k < classes; k++) {
        const place = j * classes + k;
        slope += (sums[k] as number) * (outer.values[place] as number);
        outer.slopes[place] = (outer.slopes[place] as number) + (sums[k] as number) * (held[j] as number);
      }
      back[j] = slope / (1 - leftOut);
    }
    for (const sign of [...row, signs]) {
      met.add(sign);
      for (let j = 0; j < hidden; j++)
        inner.slopes[sign * hidden + j] = (inner.slopes[sign * hidden + j] as number) + (back[j] as number);
    }
  };

  const order = examples.map((_, at) => at);
  const times = Math.ceil(order.length / AT_ONCE);
  for (let round = 0; round < rounds; round++) {
    for (let last = order.length - 1; last > 0; last--) {
      const other = Math.floor(chance() * (last + 1));
      [order[last], order[other]] = [order[other] as number, order[last] as number];
    }
    for (let time = 0; time < times; time++) {
      const met = new Set<number>();
      for (const at of order.slice(time * AT_ONCE, (time + 1) * AT_ONCE)) learnFrom(at, met);
      const done = round * times + time;
      const pace = step * (1 - done / (rounds * times));
      inner.move(met, pace, done + 1);
      outer.move(all, pace, done + 1);
    }
  }

  const rowOf = (sign: number): Float32Array => inner.values.subarray(sign * hidden, (sign + 1) * hidden);
  const kept = [...index.numbers];
  const most = kept.reduce((top, [, at]) => rowOf(at).reduce((a, b) => Math.max(a, Math.abs(b)), top), TINY);
  const unit = most / BYTE;
  const bytes = Int8Array.from(
    kept.flatMap(([, at]) => Array.from(rowOf(at), (weight) => Math.round(weight / unit))),
  );
  return {
    of: [...of],
    signs: kept.map(([sign]) => sign).join("\n"),
    inner: Buffer.from(bytes.buffer).toString("base64"),
    unit,
    start: Array.from(rowOf(signs), rounded),
    outer: Array.from(outer.values.subarray(0, hidden * classes), rounded),
    bias: Array.from(outer.values.subarray(hidden * classes), rounded),
  };
};
