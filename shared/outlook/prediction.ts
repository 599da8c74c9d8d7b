import {
  DUD_FACTORS,
  dudShareOf,
  LIVES,
  LOG_SCALE_STEP,
  LOG_SCALES,
  type LogWeights,
  SHAPES,
} from "./grid.ts";
import type { FixKind } from "./priors.ts";

/** Chance of failing by an age, as predicted from everything learned; tabulated over the logarithm of age. */
export type Prediction = {
  readonly medianDays: number;
  /** Logarithm of the cumulative hazard at each tabulated age. */
  readonly logHazard: Float64Array;
};

const FIRST_LOG_AGE = -7;
const AGES = 49;
const LAST_LOG_AGE = FIRST_LOG_AGE + (AGES - 1) * LOG_SCALE_STEP;
const LEAST_HAZARD = 1e-12;
const MOST_FAILED = 1 - 1e-15;

/** Failed share by age − scale (both logarithms, one lattice), for every shape. */
const FIRST_OFFSET = FIRST_LOG_AGE - (LOG_SCALES.at(-1) ?? 0);
const OFFSETS = AGES + LOG_SCALES.length - 1;
const FAILED_BY_OFFSET: readonly Float64Array[] = SHAPES.map((shape) =>
  Float64Array.from(
    { length: OFFSETS },
    (_, index) => -Math.expm1(-Math.LN2 * Math.exp(shape * (FIRST_OFFSET + index * LOG_SCALE_STEP))),
  ),
);

/** Sums the cells over the dud factors: one weight a sound life, and one for all duds. */
const gather = (
  kind: FixKind,
  weights: LogWeights,
): { readonly sound: Float64Array; readonly duds: number } => {
  const shares = DUD_FACTORS.map((factor) => dudShareOf(kind, factor));
  const most = weights.reduce((max, weight) => Math.max(max, weight), Number.NEGATIVE_INFINITY);
  const sound = new Float64Array(LIVES);
  let [duds, total, cell] = [0, 0, 0];
  for (let life = 0; life < LIVES; life++)
    for (const share of shares) {
      const weight = Math.exp((weights[cell++] ?? 0) - most);
      sound[life] = (sound[life] ?? 0) + weight * (1 - share);
      duds += weight * share;
      total += weight;
    }
  return { sound: sound.map((weight) => weight / total), duds: duds / total };
};

const failedSound = (sound: Float64Array, age: number): number => {
  let failed = 0;
  for (let scale = 0; scale < LOG_SCALES.length; scale++) {
    const offset = age - scale + LOG_SCALES.length - 1;
    for (let shape = 0; shape < SHAPES.length; shape++)
      failed += (sound[scale * SHAPES.length + shape] ?? 0) * (FAILED_BY_OFFSET[shape]?.[offset] ?? 1);
  }
  return failed;
};

export const predict = (kind: FixKind, weights: LogWeights): Prediction => {
  const { sound, duds } = gather(kind, weights);
  const logHazard = new Float64Array(AGES);
  for (let age = 0; age < AGES; age++) {
    const days = kind.medianDays * Math.exp(FIRST_LOG_AGE + age * LOG_SCALE_STEP);
    const failed = failedSound(sound, age) - duds * Math.expm1(-days / kind.dudDays);
    logHazard[age] = Math.log(Math.max(LEAST_HAZARD, -Math.log1p(-Math.min(MOST_FAILED, failed))));
  }
  return { medianDays: kind.medianDays, logHazard };
};

/** Chance that the fix outlives an age in days at the typical pace. */
export const outlives = ({ medianDays, logHazard }: Prediction, age: number): number => {
  if (age <= 0) return 1;
  const logAge = Math.min(LAST_LOG_AGE, Math.log(age / medianDays));
  const place = (logAge - FIRST_LOG_AGE) / LOG_SCALE_STEP;
  const index = Math.max(0, Math.min(AGES - 2, Math.floor(place)));
  const low = logHazard[index] ?? 0;
  return Math.exp(-Math.exp(low + ((logHazard[index + 1] ?? low) - low) * (place - index)));
};

/** Age at which the chance to be still holding, given that it held at `from`, has come down to `chance`. */
export const ageAt = (prediction: Prediction, from: number, chance: number): number => {
  const target = outlives(prediction, from) * chance;
  let [low, high] = [from, prediction.medianDays * Math.exp(LAST_LOG_AGE)];
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    if (outlives(prediction, middle) > target) low = middle;
    else high = middle;
  }
  return high;
};
