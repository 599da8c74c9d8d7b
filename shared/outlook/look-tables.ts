import { cellOf, type Lattice, latticeOf } from "./lattice.ts";
import { failedShares, outlives, type Prediction } from "./prediction.ts";
import { zeros } from "./zeros.ts";

/** A life, as it is predicted or as the chance to hold up to an age in days. */
export type Holding = Prediction | ((day: number) => number);

export const holds = (holding: Holding, day: number): number =>
  typeof holding === "function" ? holding(day) : outlives(holding, day);

const failedBy = (holding: Holding, { days, logDays }: Lattice): Float64Array =>
  typeof holding === "function" ? days.map((day) => 1 - holding(day)) : failedShares(holding, logDays);

/** How far a plan reaches, and about how many days its looks will lie apart. */
export type Span = { readonly horizon: number; readonly interval: number };

/** What a plan knows of a fix, age by age. */
export type Tables = {
  readonly days: Float64Array;
  readonly failed: Float64Array;
  /** Area under `failed` since the first day. */
  readonly area: Float64Array;
};

/** @param from the least age that will be asked for */
export const tablesOf = (holding: Holding, { horizon, interval }: Span, from: number): Tables => {
  const all = latticeOf(horizon, interval);
  const first = cellOf(all.days, from);
  const days = all.days.subarray(first);
  const failed = failedBy(holding, { days, logDays: all.logDays.subarray(first) });
  const area = zeros(days.length);
  for (let i = 1; i < days.length; i++) {
    const height = ((failed[i - 1] ?? 0) + (failed[i] ?? 0)) / 2;
    area[i] = (area[i - 1] ?? 0) + height * ((days[i] ?? 0) - (days[i - 1] ?? 0));
  }
  return { days, failed, area };
};

/** A fix is not kept for ever: the least yearly rate at which it stops mattering. */
const LEAST_RATE = 1 / (40 * 365);

/** Failures a day, among those still holding, just before a day of the lattice. */
export const rateBefore = ({ days, failed }: Tables, i: number): number => {
  const [before, now] = [1 - (failed[i - 1] ?? 0), Math.max(1e-300, 1 - (failed[i] ?? 0))];
  return Math.max(LEAST_RATE, Math.log(before / now) / ((days[i] ?? 0) - (days[i - 1] ?? 0)));
};

/** First day of the lattice from which on the future is taken as one of constant risk, so that no look is forced at the horizon. */
export const lastStretch = ({ days }: Tables, interval: number): number => {
  const horizon = days.at(-1) ?? 0;
  return Math.max(1, cellOf(days, horizon - Math.min(horizon / 3, interval)) + 1);
};
