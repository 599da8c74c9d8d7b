/**
 * Capital recovery factor: the equal yearly payment, at the end of each of `years`, that repays 1 at a yearly rate.
 * Standard engineering economy (A/P factor); at rate 0 it is 1/years.
 */
export const capitalRecovery = (rate: number, years: number): number =>
  rate === 0 ? 1 / years : rate / -Math.expm1(-years * Math.log1p(rate));

export type Buying = {
  readonly first: number;
  readonly years: number;
  readonly salvage?: number;
  readonly yearly?: number;
};

/** Equivalent annual cost of something bought again and again. */
export const annualCost = (rate: number, { first, years, salvage = 0, yearly = 0 }: Buying): number =>
  (first - salvage) * capitalRecovery(rate, years) + salvage * rate + yearly;

/**
 * Equivalent annual cost of mending again at every failure, each of which also costs `failure`, when one mend's life T
 * gives E[(1 + rate)^−T] = `present`. For a fixed life and no failure cost it is the capital recovery of the mend.
 * @param perYear failures a year in the long run, used when the rate is 0
 */
export const mendingCost = (
  rate: number,
  mend: number,
  failure: number,
  present: number,
  perYear: number,
): number => (rate === 0 ? (mend + failure) * perYear : (rate * (mend + failure * present)) / (1 - present));

/** How many years a mend must hold for its yearly cost to come down to `yearly`; infinite when it never does. */
export const breakEvenYears = (rate: number, mend: number, failure: number, yearly: number): number => {
  if (rate === 0) return (mend + failure) / yearly;
  const present = (yearly - mend * rate) / (yearly + failure * rate);
  return present <= 0 ? Number.POSITIVE_INFINITY : -Math.log(present) / Math.log1p(rate);
};
