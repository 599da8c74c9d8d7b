import { constantCost, constantInterval, type LookCosts } from "./constant-interval.ts";

/**
 * Looks at least cost (Barlow, Hunter and Proschan 1963): a look costs `look`, a day failed unnoticed costs `day`, and
 * a failure goes unnoticed with chance `hidden`. Backward induction over the age of the fix, in days at a steady pace: as
 * long as every look is good, the belief is the failure distribution cut off at the last look, so each state is one age.
 */

/** Chance to hold up to an age in days. */
export type Holding = (day: number) => number;

export type LookPlan = {
  /** Best age for the next look when it held at `age`; a greater age never gives a smaller one. */
  readonly next: (age: number) => number;
  /** Share of its life in service that a fix spends failed and unnoticed under this plan. */
  readonly unnoticedShare: number;
};

const FINE_DAYS = 25;
const GROWTH = 0.04;
const MAX_STEP = 25;

const latticeTo = (horizon: number): Float64Array => {
  const days: number[] = [];
  for (let day = 0; day < horizon; day += day < FINE_DAYS ? 1 : Math.min(MAX_STEP, Math.ceil(day * GROWTH)))
    days.push(day);
  days.push(horizon);
  return Float64Array.from(days);
};

const lattices = new Map<number, Float64Array>();
const lattice = (horizon: number): Float64Array => {
  const days = lattices.get(horizon) ?? latticeTo(horizon);
  lattices.set(horizon, days);
  return days;
};

const cellOf = (days: Float64Array, day: number): number => {
  let [low, high] = [0, days.length - 2];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((days[middle] ?? 0) <= day) low = middle;
    else high = middle - 1;
  }
  return low;
};

/** A fix is not kept for ever: the least yearly rate at which it stops mattering. */
const LEAST_RATE = 1 / (40 * 365);

type Tables = {
  readonly days: Float64Array;
  readonly failed: Float64Array;
  /** Area under `failed` since the first day. */
  readonly area: Float64Array;
};

const tablesOf = (holding: Holding, horizon: number, from: number): Tables => {
  const all = lattice(horizon);
  const days = all.subarray(cellOf(all, from));
  const failed = days.map((day) => 1 - holding(day));
  const area = new Float64Array(days.length);
  for (let i = 1; i < days.length; i++) {
    const width = (days[i] ?? 0) - (days[i - 1] ?? 0);
    area[i] = (area[i - 1] ?? 0) + (((failed[i] ?? 0) + (failed[i - 1] ?? 0)) / 2) * width;
  }
  return { days, failed, area };
};

/** Failures a day, among those still holding, just before a day of the lattice. */
const rateBefore = ({ days, failed }: Tables, i: number): number => {
  const [before, now] = [1 - (failed[i - 1] ?? 0), Math.max(1e-300, 1 - (failed[i] ?? 0))];
  return Math.max(LEAST_RATE, Math.log(before / now) / ((days[i] ?? 0) - (days[i - 1] ?? 0)));
};

/** First day of the lattice from which on the future is taken as one of constant risk, so that no look is forced at the horizon. */
const lastStretch = (tables: Tables, costs: LookCosts): number => {
  const { days } = tables;
  const horizon = days.at(-1) ?? 0;
  const stretch = Math.min(horizon / 3, constantInterval(rateBefore(tables, days.length - 1), costs));
  return Math.max(
    1,
    days.findIndex((day) => day >= horizon - stretch),
  );
};

type Solved = Tables & {
  /** Cost of looking on this day and going on in the best way, up to terms that are linear in the state. */
  readonly onward: Float64Array;
  readonly costOn: Float64Array;
  readonly choice: Int32Array;
};

/** The search for the best next look ends after so many steps without a better one. */
const RISES = 12;

/** Fills the tables from the horizon back; the best next look never moves later as the last look moves earlier. */
const solve = (tables: Tables, costs: LookCosts): Solved => {
  const { days, failed, area } = tables;
  const { look, hidden } = costs;
  const price = costs.day * hidden;
  const count = days.length;
  const [costOn, onward, choice] = [new Float64Array(count), new Float64Array(count), new Int32Array(count)];
  const close = (i: number, cost: number) => {
    costOn[i] = cost;
    const dead = failed[i] ?? 0;
    onward[i] = look * (1 - dead + hidden * dead) + price * (area[i] ?? 0) + cost;
  };
  const last = lastStretch(tables, costs);
  for (let i = last; i < count; i++) {
    close(i, (1 - (failed[i] ?? 0)) * constantCost(rateBefore(tables, i), costs));
    choice[i] = count;
  }
  let best = count - 1;
  for (let i = last - 1; i >= 0; i--) {
    const [dead, slope] = [failed[i] ?? 0, price * (failed[i] ?? 0)];
    let least = Number.POSITIVE_INFINITY;
    for (let j = best, rises = 0; j > i && rises < RISES; j--, rises++) {
      const cost = (onward[j] ?? 0) - slope * (days[j] ?? 0);
      if (cost < least) {
        least = cost;
        best = j;
        rises = 0;
      }
    }
    choice[i] = best;
    close(i, least - look * hidden * dead - price * (area[i] ?? 0) + slope * (days[i] ?? 0));
  }
  return { ...tables, onward, costOn, choice };
};

/** A table read between its days, by the parabola through the cell's ends and the next day. */
const readAt = (table: Float64Array, days: Float64Array, cell: number, day: number): number => {
  const first = Math.min(cell, days.length - 3);
  const [x0, x1, x2] = [days[first] ?? 0, days[first + 1] ?? 0, days[first + 2] ?? 0];
  const [y0, y1, y2] = [table[first] ?? 0, table[first + 1] ?? 0, table[first + 2] ?? 0];
  const slope = (y1 - y0) / (x1 - x0);
  const bend = ((y2 - y1) / (x2 - x1) - slope) / (x2 - x0);
  return y0 + (day - x0) * (slope + bend * (day - x1));
};

/** The best whole day around the best lattice day, for a fix that held on `from`. */
const refine = (solved: Solved, costs: LookCosts, holding: Holding, from: number): number => {
  const { days, failed, area, costOn, onward } = solved;
  const price = costs.day * costs.hidden;
  const dead = 1 - holding(from);
  let best = days.length - 1;
  for (let j = best, least = Number.POSITIVE_INFINITY; (days[j] ?? 0) > from && j >= 0; j--) {
    const cost = (onward[j] ?? 0) - price * dead * (days[j] ?? 0);
    if (cost < least) [least, best] = [cost, j];
  }
  const last = days[Math.min(days.length - 1, best + 1)] ?? from;
  let [day, least] = [days[best] ?? from, Number.POSITIVE_INFINITY];
  for (let b = Math.max(Math.floor(from) + 1, days[Math.max(0, best - 1)] ?? 0); b <= last; b++) {
    const cell = cellOf(days, b);
    const [low, now] = [failed[cell] ?? 0, 1 - holding(b)];
    const grown = (area[cell] ?? 0) + ((low + now) / 2) * (b - (days[cell] ?? 0));
    const cost =
      costs.look * (1 - now + costs.hidden * now) +
      price * (grown - dead * b) +
      readAt(costOn, days, cell, b);
    if (cost < least) [least, day] = [cost, b];
  }
  return day;
};

const shareUnnoticed = ({ days, failed, area, choice }: Solved, hidden: number): number => {
  let [unnoticed, i] = [0, 0];
  for (let j = choice[0] ?? days.length; j < days.length; j = choice[i] ?? days.length) {
    const width = (days[j] ?? 0) - (days[i] ?? 0);
    unnoticed += hidden * ((area[j] ?? 0) - (area[i] ?? 0) - (failed[i] ?? 0) * width);
    i = j;
  }
  const alive = (days[i] ?? 0) - (area[i] ?? 0);
  return unnoticed === 0 ? 0 : unnoticed / (unnoticed + alive);
};

/**
 * Plans looks for a fix over the ages up to a horizon.
 * @param from the least age that will be asked for
 */
export const planLooks = (holding: Holding, horizon: number, costs: LookCosts, from = 0): LookPlan => {
  const solved = solve(tablesOf(holding, horizon, from), costs);
  return {
    next: (age) => refine(solved, costs, holding, age),
    unnoticedShare: shareUnnoticed(solved, costs.hidden),
  };
};

/** As `planLooks`, with the price of a day raised until the plan stays under a share of unnoticed time. */
export const planSafely = (
  holding: Holding,
  horizon: number,
  costs: LookCosts,
  mostUnnoticed: number,
): LookPlan => {
  const tables = tablesOf(holding, horizon, 0);
  let [priced, solved] = [costs, solve(tables, costs)];
  let share = shareUnnoticed(solved, costs.hidden);
  for (let round = 0; round < PRICE_ROUNDS && share > mostUnnoticed; round++) {
    priced = { ...priced, day: priced.day * (PRICE_MARGIN * (share / mostUnnoticed)) ** 2 };
    solved = solve(tables, priced);
    share = shareUnnoticed(solved, costs.hidden);
  }
  return { next: (age) => refine(solved, priced, holding, age), unnoticedShare: share };
};

/** The share of unnoticed time goes with the root of the price in the dense limit; the margin makes up for the rest. */
const PRICE_ROUNDS = 6;
const PRICE_MARGIN = 1.1;
