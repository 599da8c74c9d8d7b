import { DUD_WEIGHTS, LOG_SCALE_STEP, LOG_SCALES, SHAPE_WEIGHTS, type Weights } from "./grid.ts";
import { FAILING, type Failing } from "./prediction.ts";
import type { FixKind } from "./priors.ts";
import { product } from "./product.ts";

/**
 * How lives of one kind of fix hang together on a rig: part of their spread is the rig's and its keeper's hand, the rest
 * the place's own, while shape and share of duds are the rig's alone (a hierarchical model of two levels). What happened
 * in one place is therefore full evidence there and weaker evidence elsewhere, the weaker the more is the place's own.
 */
export type Spread = {
  /** Weight of each cell for the rig, before any evidence. */
  readonly rig: Weights;
  readonly toRig: Mixing;
  readonly toPlace: Mixing;
  /** Failed share of the places' lives at each tabulated age, for every life of the rig. */
  readonly failing: Failing;
};

const SCALES = LOG_SCALES.length;

/** From every scale (second index) to every scale (first index). */
type Mixing = Float64Array;

const bell = (distance: number, deviation: number): number => Math.exp(-0.5 * (distance / deviation) ** 2);

const rigWeights = ({ spread, risk }: FixKind, rigShare: number): Weights =>
  Float64Array.from(
    LOG_SCALES.flatMap((scale) =>
      SHAPE_WEIGHTS[risk].flatMap((shapeWeight) =>
        DUD_WEIGHTS.map((dudWeight) => bell(scale, spread * Math.sqrt(rigShare)) * shapeWeight * dudWeight),
      ),
    ),
  );

/** Chance of each scale of a place, given the rig's: a row for every scale of the rig. */
const placeChances = ({ spread }: FixKind, rigShare: number): readonly (readonly number[])[] => {
  const deviation = spread * Math.sqrt(1 - rigShare);
  return LOG_SCALES.map((_, rig) => {
    const row = LOG_SCALES.map((_, place) => bell((place - rig) * LOG_SCALE_STEP, deviation));
    const sum = row.reduce((all, chance) => all + chance, 0);
    return row.map((chance) => chance / sum);
  });
};

const spreadFor = (kind: FixKind, rigShare: number): Spread => {
  const rows = placeChances(kind, rigShare);
  const toRig = Float64Array.from(rows.flat());
  return {
    rig: rigWeights(kind, rigShare),
    toRig,
    failing: mix(toRig, FAILING),
    toPlace: Float64Array.from(LOG_SCALES.flatMap((_, place) => rows.map((row) => row[place] ?? 0))),
  };
};

const spreads = new WeakMap<FixKind, Map<number, Spread>>();
export const spreadOf = (kind: FixKind, rigShare: number): Spread => {
  const known = spreads.get(kind) ?? new Map<number, Spread>();
  spreads.set(kind, known);
  const spread = known.get(rigShare) ?? spreadFor(kind, rigShare);
  known.set(rigShare, spread);
  return spread;
};

/** Mixes the rows of a table that has one for every scale. */
export const mix = (mixing: Mixing, table: Float64Array): Float64Array => product(mixing, table, SCALES);
