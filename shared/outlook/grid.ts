import { likelihood, type Observation } from "./life.ts";
import type { FixKind } from "./priors.ts";
import { zeros } from "./zeros.ts";

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

/** A relative weight for every cell: life by life (scale, then shape), dud factor innermost. */
export type Weights = Float64Array;

const SMALL = 1e-100;

/** Multiplies weights by others; what grows too small for that is scaled up. */
export const weigh = (onto: Weights, other: Weights): void => {
  let most = 0;
  for (let cell = 0; cell < CELLS; cell++) {
    const weight = (onto[cell] ?? 0) * (other[cell] ?? 0);
    onto[cell] = weight;
    if (weight > most) most = weight;
  }
  if (most < SMALL) for (let cell = 0; cell < CELLS; cell++) onto[cell] = (onto[cell] ?? 0) / most;
};

/** exp(−shape·scale), life by life: a cumulative hazard against the one at the prior median. */
const HAZARDS = Float64Array.from({ length: LIVES }, (_, life) => {
  const [scale, shape] = [LOG_SCALES[Math.floor(life / SHAPES.length)], SHAPES[life % SHAPES.length]];
  return Math.exp(-(shape ?? 1) * (scale ?? 0));
});

/** How likely an observation is: for sound lives, life by life, and for a dud. */
export type Evidence = { readonly sound: Float64Array; readonly dud: number };

/** Adds so many times the chance to outlive an age, life by life. */
const addSurvival = (onto: Float64Array, times: number, age: number, { medianDays }: FixKind): void => {
  if (times === 0) return;
  for (let shape = 0; shape < SHAPES.length; shape++) {
    const hazard = Math.LN2 * (age / medianDays) ** (SHAPES[shape] ?? 1);
    for (let life = shape; life < LIVES; life += SHAPES.length)
      onto[life] = (onto[life] ?? 0) + times * Math.exp(-hazard * (HAZARDS[life] ?? 0));
  }
};

export const evidenceOf = (kind: FixKind, seen: Observation): Evidence => {
  const { dudDays } = kind;
  const { lower, upper, atLower, atUpper, free } = seen;
  const sound = zeros(LIVES).fill(free);
  addSurvival(sound, atLower, lower, kind);
  addSurvival(sound, atUpper, upper, kind);
  return { sound, dud: likelihood(seen, Math.exp(-lower / dudDays), Math.exp(-upper / dudDays)) };
};

const TINY = 1e-12;

/** Evidence spread over the shares of duds: a weight for every cell. */
export const cellsOf = (kind: FixKind, { sound, dud }: Evidence): Weights => {
  const weights = zeros(CELLS);
  for (let factor = 0; factor < DUD_FACTORS.length; factor++) {
    const share = dudShareOf(kind, DUD_FACTORS[factor] ?? 0);
    for (let life = 0, cell = factor; life < LIVES; life++, cell += DUD_FACTORS.length) {
      const chance = sound[life] ?? 0;
      weights[cell] = Math.max(TINY, chance + share * (dud - chance));
    }
  }
  return weights;
};

/** Weights summed over the shares of duds: of sound lives, life by life, and of all duds. */
export type Gathered = { readonly sound: Float64Array; readonly duds: number };

const NOTHING: Weights = new Float64Array(CELLS).fill(1);

/** @param without what is to be taken out of the weights again */
export const gather = (kind: FixKind, weights: Weights, without: Weights = NOTHING): Gathered => {
  const sound = zeros(LIVES);
  let duds = 0;
  for (let factor = 0; factor < DUD_FACTORS.length; factor++) {
    const share = dudShareOf(kind, DUD_FACTORS[factor] ?? 0);
    let all = 0;
    for (let life = 0, cell = factor; life < LIVES; life++, cell += DUD_FACTORS.length) {
      const weight = (weights[cell] ?? 0) / (without[cell] ?? 1);
      sound[life] = (sound[life] ?? 0) + weight * (1 - share);
      all += weight;
    }
    duds += all * share;
  }
  return { sound, duds };
};
