import type { LookCosts } from "./constant-interval.ts";
import { cellOf } from "./lattice.ts";
import { bestAfter, costAfter, type Solved, shareUnnoticed, solve } from "./look-costs.ts";
import { type Holding, holds, type Span, tablesOf } from "./look-tables.ts";

/**
 * Looks at least cost (Barlow, Hunter and Proschan 1963): a look costs `look`, a day failed unnoticed costs `day`, and
 * a failure goes unnoticed with chance `hidden`. Backward induction over the age of the fix, in days at a steady pace: as
 * long as every look is good, the belief is the failure distribution cut off at the last look, so each state is one age.
 */
export type LookPlan = {
  /** Best age for the next look when it held at `age`; a greater age never gives a smaller one. */
  readonly next: (age: number) => number;
  /** Share of its life in service that a fix spends failed and unnoticed under this plan. */
  readonly unnoticedShare: () => number;
};

/** Into how many parts a cell of the lattice is divided, at most, when the best day is sought inside it. */
const PARTS = 16;

/** The cost of going on after a good look between two days of the lattice, by the parabola through them and the next one. */
const costBetween = (solved: Solved, cell: number): ((day: number) => number) => {
  const { days } = solved;
  const first = Math.min(cell, days.length - 3);
  const [x0, x1, x2] = [days[first] ?? 0, days[first + 1] ?? 0, days[first + 2] ?? 0];
  const [y0, y1, y2] = [costAfter(solved, first), costAfter(solved, first + 1), costAfter(solved, first + 2)];
  const slope = (y1 - y0) / (x1 - x0);
  const bend = ((y2 - y1) / (x2 - x1) - slope) / (x2 - x0);
  return (day) => y0 + (day - x0) * (slope + bend * (day - x1));
};

/** The best day around the best day of the lattice, for a fix that held on `from`. */
const refine =
  (solved: Solved, holding: Holding) =>
  (from: number): number => {
    const { days, failed, area, onward, costs } = solved;
    const price = costs.day * costs.hidden;
    const dead = 1 - holds(holding, from);
    const after =
      from < (days[0] ?? 0) ? -1 : days[days.length - 1] === from ? days.length : cellOf(days, from);
    const best = bestAfter(solved, after, dead);
    let day = days[best] ?? from;
    let least = (onward[best] ?? 0) - price * dead * day;
    const lastCell = Math.min(best, days.length - 2);
    for (let cell = Math.max(0, best - 1); cell <= lastCell; cell++) {
      const [start, end] = [days[cell] ?? 0, days[cell + 1] ?? 0];
      const onAfter = costBetween(solved, cell);
      const step = Math.ceil((end - start) / PARTS);
      for (let b = start + step; b < end; b += step) {
        if (b <= from) continue;
        const now = 1 - holds(holding, b);
        const grown = (area[cell] ?? 0) + (((failed[cell] ?? 0) + now) / 2) * (b - start);
        const cost = costs.look * (1 - now + costs.hidden * now) + price * (grown - dead * b) + onAfter(b);
        if (cost < least) [least, day] = [cost, b];
      }
    }
    return day;
  };

const shareOf = (solved: Solved) => () => shareUnnoticed(solved);

/**
 * Plans looks for a fix over the ages up to a horizon.
 * @param from the least age that will be asked for
 */
export const planLooks = (holding: Holding, span: Span, costs: LookCosts, from = 0): LookPlan => {
  const solved = solve(tablesOf(holding, span, from), costs);
  return { next: refine(solved, holding), unnoticedShare: shareOf(solved) };
};

/** The share of unnoticed time goes with the root of the price in the dense limit; the margin makes up for the rest. */
const PRICE_ROUNDS = 6;
const PRICE_MARGIN = 1.1;

/** As `planLooks`, with the price of a day raised until the plan stays under a share of unnoticed time. */
export const planSafely = (
  holding: Holding,
  span: Span,
  costs: LookCosts,
  mostUnnoticed: number,
): LookPlan => {
  const tables = tablesOf(holding, span, 0);
  let solved = solve(tables, costs);
  let share = shareUnnoticed(solved);
  for (let round = 0; round < PRICE_ROUNDS && share > mostUnnoticed; round++) {
    const day = solved.costs.day * (PRICE_MARGIN * (share / mostUnnoticed)) ** 2;
    solved = solve(tables, { ...costs, day });
    share = shareUnnoticed(solved);
  }
  return { next: refine(solved, holding), unnoticedShare: shareOf(solved) };
};
