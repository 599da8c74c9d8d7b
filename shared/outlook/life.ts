/**
 * Observation of one fix's life, as a linear form in its survival S: `atLower`·S(lower) + `atUpper`·S(upper) + `free`.
 * Ages are in the same unit as the life. Failed in (l, r] is S(l) − S(r); good at l is S(l).
 */
export type Observation = {
  readonly lower: number;
  readonly upper: number;
  readonly atLower: number;
  readonly atUpper: number;
  readonly free: number;
};

export const stillGood = (age: number): Observation => ({
  lower: age,
  upper: Number.POSITIVE_INFINITY,
  atLower: 1,
  atUpper: 0,
  free: 0,
});

/** Let go after the last good look at `lower` and by the bad one at `upper`. */
export const letGo = (lower: number, upper: number): Observation => ({
  lower,
  upper,
  atLower: 1,
  atUpper: -1,
  free: 0,
});

/** Better than before but not right: counted half as holding, half as let go. */
export const halfGood = (lower: number, upper: number): Observation => ({
  lower,
  upper,
  atLower: 0.5,
  atUpper: 0.5,
  free: 0,
});

/** Weibull cumulative hazard at an age, with the scale given as the median life. */
export const hazardTo = (age: number, median: number, shape: number): number =>
  age <= 0 ? 0 : Math.LN2 * (age / median) ** shape;

export type Life = { readonly median: number; readonly shape: number };
/** Fixes that never took: share of all, and mean days until it shows. */
export type Duds = { readonly share: number; readonly meanDays: number };

/** Chance that a fix outlives an age: Weibull life, mixed with a share of duds of exponential life. */
export const survival = (age: number, life: Life, duds: Duds): number => {
  if (age <= 0) return 1;
  const sound = Math.exp(-hazardTo(age, life.median, life.shape));
  return (1 - duds.share) * sound + duds.share * Math.exp(-age / duds.meanDays);
};

/** Likelihood of what was seen, for given survivals at the two ages. */
export const likelihood = (seen: Observation, atLower: number, atUpper: number): number =>
  seen.atLower * atLower + seen.atUpper * atUpper + seen.free;
