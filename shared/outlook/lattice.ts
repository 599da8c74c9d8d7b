const FINE_DAYS = 20;
const GROWTH = 0.1;
const STEPS_AN_INTERVAL = 6;

const daysTo = (horizon: number, widest: number): Float64Array => {
  const days: number[] = [];
  const step = (day: number) => (day < FINE_DAYS ? 1 : Math.min(widest, Math.ceil(day * GROWTH)));
  for (let day = 0; day < horizon; day += step(day)) days.push(day);
  days.push(horizon);
  return Float64Array.from(days);
};

/** Ages, in days, and their logarithms. */
export type Lattice = { readonly days: Float64Array; readonly logDays: Float64Array };

const lattices = new Map<string, Lattice>();

/**
 * Ages at which a plan weighs its looks: day by day at first, wider later, never wider than a part of the
 * interval. For looks that lie about `interval` days apart; plans whose intervals are near each other
 * share one, so that a small change of the belief never moves a look by its rounding.
 */
export const latticeOf = (horizon: number, interval: number): Lattice => {
  const widest = Math.max(1, Math.round(2 ** Math.round(Math.log2(interval)) / STEPS_AN_INTERVAL));
  const key = `${horizon}/${widest}`;
  const known = lattices.get(key);
  if (known !== undefined) return known;
  const days = daysTo(horizon, widest);
  const made = { days, logDays: days.map(Math.log) };
  lattices.set(key, made);
  return made;
};

/** Index of the cell that holds a day. */
export const cellOf = (days: Float64Array, day: number): number => {
  let [low, high] = [0, days.length - 2];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((days[middle] ?? 0) <= day) low = middle;
    else high = middle - 1;
  }
  return low;
};
