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
 * @param rate above 0
 */
export const mendingCost = (rate: number, mend: number, failure: number, present: number): number =>
  (rate * (mend + failure * present)) / (1 - present);

/**
 * The value of E[(1 + rate)^−T] at which mending comes down to `yearly`; a mend of the fixed life −ln(it)/ln(1 + rate)
 * has it. Not above 0 when no life is long enough.
 */
export const breakEvenPresent = (rate: number, mend: number, failure: number, yearly: number): number =>
  (yearly - mend * rate) / (yearly + failure * rate);
