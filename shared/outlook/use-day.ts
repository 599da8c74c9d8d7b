import type { Day } from "./days.ts";
import type { Use } from "./use.ts";
import type { UseAxis } from "./wear.ts";

/** How far ahead an amount of use is searched for. */
export const FAR_DAYS = 3 * 365;

/** The first day by which so much use has come together since `from`; at most `FAR_DAYS` on. */
export const dayOfUse = (use: Use, axis: UseAxis, from: Day, count: number): Day => {
  let [low, high] = [from, from + FAR_DAYS];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (use.between(axis, from, middle) < count) low = middle;
    else high = middle;
  }
  return high;
};
