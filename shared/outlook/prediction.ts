import { type Gathered, LIVES, LOG_SCALE_STEP, LOG_SCALES, SHAPES } from "./grid.ts";
import type { FixKind } from "./priors.ts";
import { product } from "./product.ts";
import { zeros } from "./zeros.ts";

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

/** Failed share at each tabulated age, a row for every sound life. */
export type Failing = Float64Array;

/** As it follows from scale and shape. */
export const FAILING: Failing = Float64Array.from({ length: LIVES * AGES }, (_, index) => {
  const life = Math.floor(index / AGES);
  const [scale, shape] = [LOG_SCALES[Math.floor(life / SHAPES.length)], SHAPES[life % SHAPES.length]];
  const logAge = FIRST_LOG_AGE + (index % AGES) * LOG_SCALE_STEP - (scale ?? 0);
  return -Math.expm1(-Math.LN2 * Math.exp((shape ?? 1) * logAge));
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
export const predict = (kind: FixKind, { sound, duds }: Gathered, failing = FAILING): Prediction => {
  let total = duds;
  for (let life = 0; life < LIVES; life++) total += sound[life] ?? 0;
  const soundFailed = product(sound, failing, LIVES);
  const dudFailed = dudsFailedOf(kind);
  const logHazard = zeros(AGES);
  for (let age = 0; age < AGES; age++) {
    const failed = ((soundFailed[age] ?? 0) + duds * (dudFailed[age] ?? 0)) / total;
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

/** Shares failed by many ages, given as logarithms of days: 1 − `outlives`, written out for speed. */
export const failedShares = ({ medianDays, logHazard }: Prediction, logAges: Float64Array): Float64Array => {
  const shares = zeros(logAges.length);
  const first = Math.log(medianDays) + FIRST_LOG_AGE;
  for (let i = 0; i < logAges.length; i++) {
    const place = Math.min(AGES - 1, ((logAges[i] ?? 0) - first) / LOG_SCALE_STEP);
    if (place === Number.NEGATIVE_INFINITY) continue;
    const index = Math.max(0, Math.min(AGES - 2, Math.floor(place)));
    const low = logHazard[index] ?? 0;
    const logged = low + ((logHazard[index + 1] ?? low) - low) * (place - index);
    shares[i] = 1 - Math.exp(-Math.exp(logged));
  }
  return shares;
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
