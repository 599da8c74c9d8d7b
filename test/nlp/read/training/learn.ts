import type { LearntJudges } from "../../../../nlp/read/judges.ts";
import type { LearntLayers } from "../../../../nlp/read/layered.ts";
import type { Learnt } from "../../../../nlp/read/linear.ts";
import { ACTIONS, COMPONENTS, KINDS, OUTCOMES } from "../../../../shared/vocabulary.ts";
import type { Lessons } from "./examples.ts";
import { fitLayers } from "./layered.ts";
import { type Example, fitClasses, fitShares, regress } from "./linear.ts";
import { nameLessons } from "./names.ts";

const WORDS = { hidden: 96, least: 8, leftOut: 0.4, rounds: 5 };

/** The judges of what words speak of: by what is told around things, and by what owners call them as well. */
export const learnDescribed = ({ described }: Pick<Lessons, "described">, names: readonly Example[]) => ({
  described: fitLayers(described, COMPONENTS, WORDS),
  called: fitLayers([...described, ...names], COMPONENTS, WORDS),
});

const NOTHING: Learnt = { of: [], bias: [], signs: "", weights: "", unit: 1 };
const NO_LAYERS: LearntLayers = {
  of: [],
  signs: "",
  inner: "",
  unit: 1,
  start: [],
  outer: [],
  bias: [],
};
export const EMPTY_TABLES: LearntJudges = {
  tells: NOTHING,
  kind: NO_LAYERS,
  plainly: NOTHING,
  aim: NOTHING,
  described: NO_LAYERS,
  called: NO_LAYERS,
  kept: NO_LAYERS,
  date: NOTHING,
  where: NOTHING,
  exposure: NO_LAYERS,
  usage: NO_LAYERS,
  cost: NOTHING,
  material: NOTHING,
  action: NOTHING,
  outcome: NOTHING,
  outcomeLayers: NO_LAYERS,
};

/** The judges of what is told at a place, and of which thing. */
export const learnPlaces = (lessons: Pick<Lessons, "tells" | "kind" | "aim">) => ({
  tells: regress(lessons.tells, ["tells"], { pull: 1, smallest: 0.1 }),
  kind: fitLayers(lessons.kind, [...KINDS, ""], { hidden: 32, least: 12, rounds: 4, step: 0.004 }),
  plainly: fitClasses(lessons.kind, [...KINDS, ""], {
    pull: 0.3,
    smallest: 0.05,
    rounds: 10,
    step: 0.03,
  }),
  aim: fitShares(lessons.aim, { pull: 1, smallest: 0.02 }),
});

/** Each judge of a field, from what notes teach of it, at the pace at which it does best on notes held out. */
const FIELDS = {
  date: (lessons: Pick<Lessons, "date">) => fitShares(lessons.date, { pull: 2, smallest: 0.02 }),
  where: (lessons: Pick<Lessons, "where">) => fitShares(lessons.where, { pull: 1, smallest: 0.02 }),
  exposure: (lessons: Pick<Lessons, "exposure">) =>
    fitLayers(lessons.exposure, ["since", ""], { rounds: 5, step: 0.003 }),
  usage: (lessons: Pick<Lessons, "usage">) =>
    fitLayers(lessons.usage, ["used", ""], { rounds: 6, step: 0.004 }),
  cost: (lessons: Pick<Lessons, "cost">) => regress(lessons.cost, ["paid"], { pull: 2, smallest: 0.1 }),
  material: (lessons: Pick<Lessons, "material">) =>
    regress(lessons.material, ["in"], { pull: 1, smallest: 0.12 }),
  action: (lessons: Pick<Lessons, "action">) =>
    fitClasses(lessons.action, ACTIONS, { pull: 0.3, smallest: 0.06, step: 0.07 }),
  outcome: (lessons: Pick<Lessons, "outcome">) =>
    fitClasses(lessons.outcome, OUTCOMES, { pull: 1, smallest: 0.05, step: 0.03 }),
  outcomeLayers: (lessons: Pick<Lessons, "outcome">) =>
    fitLayers(lessons.outcome, OUTCOMES, { hidden: 32, least: 6, rounds: 4, step: 0.003 }),
} as const;
export type FieldJudge = keyof typeof FIELDS;
export const FIELD_JUDGES = Object.keys(FIELDS) as readonly FieldJudge[];

/** Some judges of fields, by their names. */
export const learnFields = (lessons: Lessons, names: readonly FieldJudge[]) =>
  Object.fromEntries(names.map((name) => [name, FIELDS[name](lessons)])) as Pick<LearntJudges, FieldJudge>;

/** The judges as learnt from what notes teach. */
export const learn = (lessons: Lessons): LearntJudges => ({
  ...learnPlaces(lessons),
  ...learnDescribed(lessons, nameLessons()),
  kept: fitLayers(lessons.kept, ["kept", ""], { rounds: 2, step: 0.003 }),
  ...learnFields(lessons, FIELD_JUDGES),
});
