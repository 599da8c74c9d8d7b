import { constantInterval, type LookCosts } from "./constant-interval.ts";
import { cellOf, latticeOf } from "./lattice.ts";

/** Chance to hold up to an age in days. */
export type Holding = (day: number) => number;

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
  const days = all.subarray(cellOf(all, from));
  const count = days.length;
  const failed = new Float64Array(count);
  const area = new Float64Array(count);
  let [before, dead, sum] = [days[0] ?? 0, 1 - holding(days[0] ?? 0), 0];
  failed[0] = dead;
  for (let i = 1; i < count; i++) {
    const day = days[i] ?? 0;
    const now = 1 - holding(day);
    sum += ((dead + now) / 2) * (day - before);
    failed[i] = now;
    area[i] = sum;
    [before, dead] = [day, now];
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
export const lastStretch = (tables: Tables, costs: LookCosts): number => {
  const { days } = tables;
  const horizon = days.at(-1) ?? 0;
  const stretch = Math.min(horizon / 3, constantInterval(rateBefore(tables, days.length - 1), costs));
  return Math.max(1, cellOf(days, horizon - stretch) + 1);
};
