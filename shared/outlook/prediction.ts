import { type Gathered, LIVES, LOG_SCALE_STEP, LOG_SCALES, SHAPES } from "./grid.ts";
import type { FixKind } from "./priors.ts";

/** Chance of failing by an age, as predicted from everything learned; tabulated over the logarithm of age. */
export type Prediction = {
  readonly medianDays: number;
  /** Logarithm of the cumulative hazard at each tabulated age. */
  readonly logHazard: Float64Array;
};

const FIRST_LOG_AGE = -5.4;
const AGES = 32;
const LAST_LOG_AGE = FIRST_LOG_AGE + (AGES - 1) * LOG_SCALE_STEP;
const LEAST_HAZARD = 1e-12;
const MOST_FAILED = 1 - 1e-15;

const AGES_OF_MEDIAN = Float64Array.from({ length: AGES }, (_, age) =>
  Math.exp(FIRST_LOG_AGE + age * LOG_SCALE_STEP),
);

/**
 * Failed share of sound lives by age over scale (both logarithms, one lattice), greatest first, shape by shape: for each
 * tabulated age the shares of all lives then stand in a row, in the order of the lives.
 */
const LAST_OFFSET = LAST_LOG_AGE - (LOG_SCALES[0] ?? 0);
const FAILED = Float64Array.from({ length: SHAPES.length * (AGES + LOG_SCALES.length - 1) }, (_, index) => {
  const logAge = LAST_OFFSET - Math.floor(index / SHAPES.length) * LOG_SCALE_STEP;
  return -Math.expm1(-Math.LN2 * Math.exp((SHAPES[index % SHAPES.length] ?? 1) * logAge));
});

const dudsFailed = new WeakMap<FixKind, Float64Array>();
/** Failed share of duds at each tabulated age. */
const dudsFailedOf = (kind: FixKind): Float64Array => {
  const known = dudsFailed.get(kind);
  if (known !== undefined) return known;
  const made = AGES_OF_MEDIAN.map((age) => -Math.expm1((-age * kind.medianDays) / kind.dudDays));
  dudsFailed.set(kind, made);
  return made;
};

/** @param gathered weights of sound lives and of duds, relative to each other */
export const predict = (kind: FixKind, { sound, duds }: Gathered): Prediction => {
  const total = sound.reduce((sum, weight) => sum + weight, duds);
  const dudFailed = dudsFailedOf(kind);
  const logHazard = new Float64Array(AGES);
  for (let age = 0; age < AGES; age++) {
    const first = (AGES - 1 - age) * SHAPES.length;
    let failed = duds * (dudFailed[age] ?? 0);
    for (let life = 0; life < LIVES; life++) failed += (sound[life] ?? 0) * (FAILED[first + life] ?? 0);
    logHazard[age] = Math.log(Math.max(LEAST_HAZARD, -Math.log1p(-Math.min(MOST_FAILED, failed / total))));
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
