import { constantCost, constantInterval, type LookCosts } from "./constant-interval.ts";
import { lastStretch, rateBefore, type Tables } from "./look-tables.ts";
import { zeros } from "./zeros.ts";

/** The lower hull of points that come up one by one on the left, for lines whose slope only ever falls. */
class Hull {
  private readonly x: Float64Array;
  private readonly y: Float64Array;
  private readonly corners: number[];
  private right = 0;
  private left = -1;

  constructor(x: Float64Array, y: Float64Array) {
    this.x = x;
    this.y = y;
    this.corners = new Array<number>(x.length);
  }

  /** How much higher a point lies than another one on its left, and how far right. */
  private rise(right: number, left: number): number {
    return (this.y[right] ?? 0) - (this.y[left] ?? 0);
  }
  private run(right: number, left: number): number {
    return (this.x[right] ?? 0) - (this.x[left] ?? 0);
  }

  add(index: number): void {
    while (this.left > this.right) {
      const last = this.corners[this.left] ?? 0;
      const before = this.corners[this.left - 1] ?? 0;
      if (this.rise(last, index) * this.run(before, last) < this.rise(before, last) * this.run(last, index))
        break;
      this.left--;
    }
    this.corners[++this.left] = index;
  }

  /** The point that a line of that slope touches from below; what lies right of it is done with. */
  touchedBy(slope: number): number {
    while (this.left > this.right) {
      const corner = this.corners[this.right] ?? 0;
      const next = this.corners[this.right + 1] ?? 0;
      if (this.rise(corner, next) < slope * this.run(corner, next)) break;
      this.right++;
    }
    return this.corners[this.right] ?? 0;
  }
}

/** The cost of going on in the best way, age by age. */
export type Solved = Tables & {
  readonly costs: LookCosts;
  /** Cost of looking on this day and going on in the best way, up to terms that are linear in the state. */
  readonly onward: Float64Array;
  /** From this day of the lattice on, the future is taken as one of constant risk. */
  readonly last: number;
};

/**
 * Fills the table from the horizon back. The best next look is where a line of slope `price · failed` touches the
 * points (day, onward): going back, its slope falls, so that the look never moves later.
 */
export const solve = (tables: Tables, costs: LookCosts): Solved => {
  const { days, failed, area } = tables;
  const { look, hidden } = costs;
  const price = costs.day * hidden;
  const count = days.length;
  const onward = zeros(count);
  const hull = new Hull(days, onward);
  const rate = rateBefore(tables, count - 1);
  const interval = constantInterval(rate, costs);
  const last = lastStretch(tables, interval);
  const lasting = constantCost(rate, interval, costs);
  for (let i = count - 1; i >= 0; i--) {
    const dead = failed[i] ?? 0;
    if (i >= last) {
      onward[i] = look * (1 - dead + hidden * dead) + price * (area[i] ?? 0) + (1 - dead) * lasting;
    } else {
      const best = hull.touchedBy(price * dead);
      const wait = (days[best] ?? 0) - (days[i] ?? 0);
      onward[i] = look * (1 - dead) + (onward[best] ?? 0) - price * dead * wait;
    }
    hull.add(i);
  }
  return { days, failed, area, costs, onward, last };
};

/** Index of the best day of the lattice for the next look, after the index `after`, when so much had failed at the last one. */
export const bestAfter = ({ days, costs, onward }: Solved, after: number, dead: number): number => {
  const slope = costs.day * costs.hidden * dead;
  let best = days.length - 1;
  let least = Number.POSITIVE_INFINITY;
  for (let j = best; j > after; j--) {
    const cost = (onward[j] ?? 0) - slope * (days[j] ?? 0);
    if (cost < least) {
      least = cost;
      best = j;
    }
  }
  return best;
};

/** Cost of going on after a good look on a day of the lattice. */
export const costAfter = ({ costs, failed, area, onward }: Solved, i: number): number => {
  const { look, day, hidden } = costs;
  const dead = failed[i] ?? 0;
  return (onward[i] ?? 0) - look * (1 - dead + hidden * dead) - day * hidden * (area[i] ?? 0);
};

/** Share of its life in service that a fix spends failed and unnoticed when it is looked at as planned from the first day on. */
export const shareUnnoticed = (solved: Solved): number => {
  const { days, failed, area, last, costs } = solved;
  let [unnoticed, i] = [0, 0];
  while (i < last) {
    const j = bestAfter(solved, i, failed[i] ?? 0);
    const width = (days[j] ?? 0) - (days[i] ?? 0);
    unnoticed += costs.hidden * ((area[j] ?? 0) - (area[i] ?? 0) - (failed[i] ?? 0) * width);
    i = j;
  }
  const alive = (days[i] ?? 0) - (area[i] ?? 0);
  return unnoticed === 0 ? 0 : unnoticed / (unnoticed + alive);
};
