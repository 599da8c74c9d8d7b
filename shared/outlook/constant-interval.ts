/** A look costs `look`, a day failed unnoticed costs `day`, and a failure goes unnoticed with chance `hidden`. */
export type LookCosts = { readonly look: number; readonly day: number; readonly hidden: number };

/**
 * Constant interval for an exponential life: the x with e^(rx) − rx − 1 = r·look/(day·hidden).
 * @param rate failures a day, above 0
 */
export const constantInterval = (rate: number, { look, day, hidden }: LookCosts): number => {
  const target = (rate * look) / (day * hidden);
  let y = Math.min(Math.sqrt(2 * target), Math.log1p(target) + 1);
  for (let round = 0; round < 30; round++) {
    const grown = Math.expm1(y);
    const step = (grown - y - target) / grown;
    y -= step;
    if (Math.abs(step) < 1e-12 * y) break;
  }
  return y / rate;
};

/** Cost from a good look on, for an exponential life looked at in a constant interval. */
export const constantCost = (rate: number, interval: number, { look, day, hidden }: LookCosts): number => {
  const failed = -Math.expm1(-rate * interval);
  return (look * (hidden * failed + 1 - failed) + day * hidden * (interval - failed / rate)) / failed;
};
