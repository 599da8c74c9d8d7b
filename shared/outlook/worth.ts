import { ageAt, outlives, type Prediction } from "./prediction.ts";

const DAYS_PER_YEAR = 365.2425;
const STEP_YEARS = 1 / 24;
const LONG_YEARS = 60;

/** E[(1 + rate)^−T] and E[T] in years of a life, by summing over half months. */
export const worth = (
  prediction: Prediction,
  ageing: number,
  rate: number,
): { present: number; years: number } => {
  const delta = Math.log1p(rate);
  let [discounted, years] = [0, 0];
  for (let t = STEP_YEARS / 2; t < LONG_YEARS; t += STEP_YEARS) {
    const holds = outlives(prediction, t * DAYS_PER_YEAR * ageing) * STEP_YEARS;
    discounted += Math.exp(-delta * t) * holds;
    years += holds;
  }
  return { present: 1 - delta * discounted, years };
};

export const medianYears = (prediction: Prediction, ageing: number) =>
  ageAt(prediction, 0, 0.5) / ageing / DAYS_PER_YEAR;
