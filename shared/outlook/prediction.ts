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

const FIRST_LOG_AGE = -6.9;
const AGES = 40;
const LAST_LOG_AGE = FIRST_LOG_AGE + (AGES - 1) * LOG_SCALE_STEP;
const LEAST_HAZARD = 1e-12;
const MOST_FAILED = 1 - 1e-15;

/** Failed share by shape, then by age − scale (both logarithms, one lattice). */
const FIRST_OFFSET = FIRST_LOG_AGE - (LOG_SCALES.at(-1) ?? 0);
const OFFSETS = AGES + LOG_SCALES.length - 1;
const FAILED = Float64Array.from({ length: SHAPES.length * OFFSETS }, (_, index) => {
  const shape = SHAPES[Math.floor(index / OFFSETS)] ?? 1;
  const logAge = FIRST_OFFSET + (index % OFFSETS) * LOG_SCALE_STEP;
  return -Math.expm1(-Math.LN2 * Math.exp(shape * logAge));
});

/** Cells whose weight is so far below the greatest (as a logarithm) change nothing. */
const NEGLIGIBLE = -16;

/** Sums the cells over the dud factors: one weight a sound life, and one for all duds. */
const gather = (
  kind: FixKind,
  weights: LogWeights,
): { readonly sound: Float64Array; readonly duds: number } => {
  const shares = DUD_FACTORS.map((factor) => dudShareOf(kind, factor));
  let most = Number.NEGATIVE_INFINITY;
  for (const weight of weights) most = Math.max(most, weight);
  const sound = new Float64Array(LIVES);
  let [duds, total, cell] = [0, 0, 0];
  for (let life = 0; life < LIVES; life++)
    for (const share of shares) {
      const below = (weights[cell++] ?? 0) - most;
      if (below < NEGLIGIBLE) continue;
      const weight = Math.exp(below);
      sound[life] = (sound[life] ?? 0) + weight * (1 - share);
      duds += weight * share;
      total += weight;
    }
  return { sound: sound.map((weight) => weight / total), duds: duds / total };
};

const failedSound = (sound: Float64Array, age: number): number => {
  let [failed, life] = [0, 0];
  for (let offset = age + LOG_SCALES.length - 1; offset >= age; offset--)
    for (let at = offset; at < FAILED.length; at += OFFSETS)
      failed += (sound[life++] ?? 0) * (FAILED[at] ?? 0);
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
  const { medianDays, logHazard } = prediction;
  const wanted = Math.log(-Math.log(Math.max(1e-300, outlives(prediction, from) * chance)));
  let index = 0;
  while (index < AGES - 2 && (logHazard[index + 1] ?? 0) < wanted) index++;
  const low = logHazard[index] ?? 0;
  const place = index + (wanted - low) / ((logHazard[index + 1] ?? 0) - low);
  return medianDays * Math.exp(Math.min(LAST_LOG_AGE, FIRST_LOG_AGE + place * LOG_SCALE_STEP));
};
