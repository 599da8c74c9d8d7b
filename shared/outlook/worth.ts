import { ageAt, outlives, type Prediction } from "./prediction.ts";

const DAYS_PER_YEAR = 365.2425;
const STEP_YEARS = 1 / 24;
const LONG_YEARS = 60;

/** E[(1 + rate)^−T] of a life in years, by summing over half months. */
export const presentOf = (prediction: Prediction, ageing: number, rate: number): number => {
  const delta = Math.log1p(rate);
  let discounted = 0;
  for (let t = STEP_YEARS / 2; t < LONG_YEARS; t += STEP_YEARS)
    discounted += Math.exp(-delta * t) * outlives(prediction, t * DAYS_PER_YEAR * ageing) * STEP_YEARS;
  return Math.max(0, 1 - delta * discounted);
};

const LONGEST_STRETCH = 64;

/** How many times longer a life must be for its E[(1 + rate)^−T] to come down to `present`; infinite when it can't. */
export const stretchFor = (prediction: Prediction, ageing: number, rate: number, present: number): number => {
  let [low, high] = [1 / LONGEST_STRETCH, LONGEST_STRETCH];
  if (presentOf(prediction, ageing / high, rate) > present) return Number.POSITIVE_INFINITY;
  for (let halving = 0; halving < 12; halving++) {
    const middle = Math.sqrt(low * high);
    if (presentOf(prediction, ageing / middle, rate) > present) low = middle;
    else high = middle;
  }
  return high;
};

export const medianYears = (prediction: Prediction, ageing: number) =>
  ageAt(prediction, 0, 0.5) / ageing / DAYS_PER_YEAR;
