import {
  DUD_FACTORS,
  DUD_WEIGHTS,
  dudShareOf,
  SHAPE_WEIGHTS,
  SHAPES,
} from "../../../../shared/outlook/grid.ts";
import { type FixKind, fixKindOf } from "../../../../shared/outlook/priors.ts";
import type { RecordFields } from "../../../../shared/record.ts";
import type { Action, ComponentId } from "../../../../shared/vocabulary.ts";
import { normal, pick, type Random } from "./random.ts";

/** What really governs lives in a world, which the program is never told. */
export type Nature = {
  /** Every life longer or shorter than the prior table says, by this factor. */
  readonly bias: number;
  /** How much of the spread of lives is the rig's (shared by the same way of fixing), the rest being the place's. */
  readonly rigShare: number;
};

export const AS_EXPECTED: Nature = { bias: 1, rigShare: 0.4 };

type Work = {
  readonly component: ComponentId;
  readonly action: Action;
  readonly materials: readonly string[];
};

/** Mixed kinds of fix, by consequence. */
export const WORKS: readonly (readonly Work[])[] = [
  [
    { component: "frame", action: "weld", materials: [] },
    { component: "entry-step", action: "weld", materials: [] },
    { component: "exterior-light", action: "rewire", materials: ["crimp lug"] },
    { component: "gas-regulator", action: "replace", materials: [] },
    { component: "brake", action: "adjust", materials: [] },
    { component: "outlet", action: "replace", materials: [] },
    { component: "hitch", action: "tighten", materials: [] },
  ],
  [
    { component: "gray-tank", action: "patch", materials: ["epoxy", "glass cloth"] },
    { component: "black-tank", action: "patch", materials: ["epoxy putty"] },
    { component: "roof-seam", action: "seal", materials: ["lap sealant"] },
    { component: "window", action: "seal", materials: ["butyl"] },
    { component: "underbelly", action: "patch", materials: ["repair tape"] },
    { component: "shower", action: "seal", materials: ["silicone"] },
    { component: "slide-seal", action: "replace", materials: ["bulb seal"] },
  ],
  [
    { component: "bumper", action: "reinforce", materials: ["steel plate"] },
    { component: "fresh-tank", action: "weld", materials: [] },
    { component: "water-pump", action: "refasten", materials: ["hose clamp"] },
    { component: "battery", action: "replace", materials: [] },
    { component: "entry-door", action: "adjust", materials: [] },
    { component: "solar", action: "refasten", materials: ["screw"] },
    { component: "converter", action: "rewire", materials: [] },
  ],
  [
    { component: "cabinet", action: "refasten", materials: ["screw"] },
    { component: "furniture", action: "refasten", materials: ["wood glue"] },
    { component: "awning", action: "patch", materials: ["repair tape"] },
    { component: "stabilizer", action: "tighten", materials: [] },
    { component: "interior-light", action: "replace", materials: [] },
    { component: "screen", action: "patch", materials: ["mesh"] },
    { component: "vent-fan", action: "repair", materials: [] },
  ],
];

export const fieldsOf = (work: Work, date: string): RecordFields => ({
  ...work,
  materials: [...work.materials],
  kind: "repair",
  where: null,
  date,
  outcome: "untested",
  exposure: [],
  cost: null,
  fault: null,
  due: null,
});

export const kindOfWork = (work: Work): FixKind => {
  const kind = fixKindOf(fieldsOf(work, "2020-01-01"));
  if (kind === undefined) throw new Error(`The ${work.action} of the ${work.component} is no fix.`);
  return kind;
};

/** What a rig does to one way of fixing, and a place to what is fixed there. */
type Trait = { readonly logScale: number; readonly shape: number; readonly dudShare: number };

export const traitOf = (random: Random, kind: FixKind, nature: Nature): Trait => ({
  logScale: Math.log(nature.bias) + normal(random) * kind.spread * Math.sqrt(nature.rigShare),
  shape: pick(random, SHAPES, SHAPE_WEIGHTS[kind.risk]),
  dudShare: dudShareOf(kind, pick(random, DUD_FACTORS, DUD_WEIGHTS)),
});

export const placeOf = (random: Random, kind: FixKind, nature: Nature): number =>
  normal(random) * kind.spread * Math.sqrt(1 - nature.rigShare);

/** A life in days at the typical pace. */
export const drawLife = (random: Random, kind: FixKind, trait: Trait, place: number): number => {
  const chance = -Math.log(1 - random());
  if (random() < trait.dudShare) return chance * kind.dudDays;
  const median = kind.medianDays * Math.exp(trait.logScale + place);
  return median * (chance / Math.LN2) ** (1 / trait.shape);
};

export type { Trait, Work as WorkDone };
