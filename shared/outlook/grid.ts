import { likelihood, type Observation } from "./life.ts";
import type { FixKind } from "./priors.ts";

/**
 * The hypotheses about a kind of fix in one place: its life against the prior median (1 = as expected), the Weibull
 * shape, and the share of duds. Ages are in prior medians, so that one grid serves every kind and unit.
 */
const STEP = 0.3;
const REACH = 8;
export const LOG_SCALE_STEP = STEP;
export const LOG_SCALES: readonly number[] = Array.from(
  { length: 2 * REACH + 1 },
  (_, i) => (i - REACH) * STEP,
);
export const SHAPES = [0.75, 1, 1.5, 2.3] as const;
/** Share of duds as a multiple of the expected one, chosen so that the weights below give a mean of about 1. */
export const DUD_FACTORS = [0.15, 0.6, 1.3, 2.6] as const;
export const DUD_WEIGHTS = [0.25, 0.3, 0.28, 0.17] as const;
/** How likely each shape is when the risk falls, stays or rises with age (judgement). */
export const SHAPE_WEIGHTS = {
  early: [0.45, 0.35, 0.15, 0.05],
  steady: [0.15, 0.4, 0.35, 0.1],
  wear: [0.05, 0.2, 0.4, 0.35],
} as const;

export const LIVES = LOG_SCALES.length * SHAPES.length;
const CELLS = LIVES * DUD_FACTORS.length;

const MAX_DUD_SHARE = 0.6;
export const dudShareOf = (kind: FixKind, factor: number): number =>
  Math.min(MAX_DUD_SHARE, kind.dud * factor);

/** Logarithm of the weight of every cell: life by life (scale, then shape), dud factor innermost. */
export type LogWeights = Float64Array;

export const priorWeights = (kind: FixKind): LogWeights => {
  const weights = new Float64Array(CELLS);
  let cell = 0;
  for (const logScale of LOG_SCALES)
    for (const shapeWeight of SHAPE_WEIGHTS[kind.risk])
      for (const dudWeight of DUD_WEIGHTS)
        weights[cell++] = -0.5 * (logScale / kind.spread) ** 2 + Math.log(shapeWeight * dudWeight);
  return weights;
};

const TINY = 1e-12;

/** Survival of a sound life at an age, from the logarithm of age over the life's median. */
const soundAt = (logAge: number, shape: number): number => Math.exp(-Math.LN2 * Math.exp(shape * logAge));

/** Adds the logarithm of an observation's likelihood, times a weight, to every cell. */
export const learn = (weights: LogWeights, kind: FixKind, seen: Observation, weight: number): void => {
  const { medianDays, dudDays } = kind;
  const dud = likelihood(seen, Math.exp(-seen.lower / dudDays), Math.exp(-seen.upper / dudDays));
  const shares = DUD_FACTORS.map((factor) => dudShareOf(kind, factor));
  const [logLower, logUpper] = [Math.log(seen.lower / medianDays), Math.log(seen.upper / medianDays)];
  let cell = 0;
  for (const logScale of LOG_SCALES)
    for (const shape of SHAPES) {
      const sound = likelihood(
        seen,
        soundAt(logLower - logScale, shape),
        soundAt(logUpper - logScale, shape),
      );
      for (const share of shares) {
        const chance = Math.max(TINY, (1 - share) * sound + share * dud);
        weights[cell] = (weights[cell] ?? 0) + weight * Math.log(chance);
        cell++;
      }
    }
};

export const addWeights = (onto: LogWeights, other: LogWeights, times: number): void => {
  for (let cell = 0; cell < onto.length; cell++) onto[cell] = (onto[cell] ?? 0) + times * (other[cell] ?? 0);
};

export const emptyWeights = (): LogWeights => new Float64Array(CELLS);
