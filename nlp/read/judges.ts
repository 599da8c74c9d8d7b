import {
  ACTIONS,
  type Action,
  COMPONENTS,
  KINDS,
  type Kind,
  OUTCOMES,
  type Outcome,
} from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import type { Token } from "../lexicon/tokens.ts";
import { bothWays } from "./both-ways.ts";
import type { Candidate } from "./candidate.ts";
import type { CostChoice } from "./cost-signs.ts";
import type { DateChoice } from "./date-signs.ts";
import type { Deed } from "./deed.ts";
import { type Described, describer } from "./described.ts";
import type { ExposureChoice } from "./exposure-signs.ts";
import fields from "./field-judges.json" with { type: "json" };
import places from "./judges.json" with { type: "json" };
import { type LearntLayers, layered, layering } from "./layered.ts";
import { chances, type Learnt, parts, shares, weighing } from "./linear.ts";
import type { Made } from "./made.ts";
import type { MaterialChoice } from "./material-signs.ts";
import type { Setting } from "./setting.ts";
import type { Telling } from "./tellings.ts";
import type { UseChoice } from "./use-choice.ts";
import type { WhereChoice } from "./where-signs.ts";

export type Chances = Readonly<Record<Kind, number>>;

/** The decisions of the reader that were learnt from notes with known records; chances go from 0 to 1. */
export type Judges = {
  /** How sure that a note tells anything to be written down. */
  readonly tells: (signs: readonly string[]) => number;
  /** What is told at a place, if anything. */
  readonly kind: (signs: readonly string[], telling: Telling, setting: Setting) => Chances;
  /** What the words around a place of a text speak of. */
  readonly described: (tokens: readonly Token[], at: number) => Described;
  /** Which of several mentions it is told of; adds up to 1. */
  readonly aim: (
    signs: readonly (readonly string[])[],
    telling: Telling,
    aims: readonly ComponentRef[],
  ) => readonly number[];
  /** How sure that a candidate is a record of its own. */
  readonly kept: (signs: readonly string[], each: Candidate, all: readonly Candidate[]) => number;
  /** Which of several dates it has; adds up to 1. */
  readonly date: (
    signs: readonly (readonly string[])[],
    made: Made,
    choices: readonly DateChoice[],
  ) => readonly number[];
  /** Which of several phrases says where it is, if any; adds up to 1. */
  readonly where: (
    signs: readonly (readonly string[])[],
    made: Made,
    choices: readonly WhereChoice[],
  ) => readonly number[];
  /** How sure that some use or time passed since. */
  readonly exposure: (signs: readonly string[], made: Made, choice: ExposureChoice) => number;
  /** How sure that an amount is of the use of the rig itself. */
  readonly usage: (signs: readonly string[], choice: UseChoice) => number;
  /** How sure that a sum is what it cost. */
  readonly cost: (signs: readonly string[], made: Made, choice: CostChoice) => number;
  /** How sure that something named went in or on. */
  readonly material: (
    signs: readonly string[],
    made: Made,
    choice: MaterialChoice,
    choices: readonly MaterialChoice[],
  ) => number;
  /** What was or is to be done. */
  readonly action: (signs: readonly string[], ruled: Action, deed: Deed) => Action;
  /** How it came out. */
  readonly outcome: (
    signs: readonly string[],
    made: Made,
  ) => { readonly outcome: Outcome; readonly sure: number };
};

export type LearntJudges = {
  readonly tells: Learnt;
  readonly kind: LearntLayers;
  /** The same without a layer between. */
  readonly plainly: Learnt;
  readonly aim: Learnt;
  readonly described: LearntLayers;
  /** The same, learnt from what owners call things as well. */
  readonly called: LearntLayers;
  readonly kept: LearntLayers;
  readonly date: Learnt;
  readonly where: Learnt;
  readonly exposure: LearntLayers;
  readonly usage: LearntLayers;
  readonly cost: Learnt;
  readonly material: Learnt;
  readonly action: Learnt;
  readonly outcome: Learnt;
  /** The same with a layer between. */
  readonly outcomeLayers: LearntLayers;
};

const likeliest = <T>(
  of: readonly T[],
  rated: readonly number[],
): { readonly value: T; readonly sure: number } => {
  const sure = Math.max(...rated);
  return { value: of[rated.indexOf(sure)] as T, sure };
};

const means = (some: readonly number[], others: readonly number[]): number[] =>
  some.map((each, at) => (each + (others[at] ?? 0)) / 2);

/** Judges that weigh the signs that they see with learnt weights. */
export const judgesBy = (tables: LearntJudges): Judges => {
  const tells = weighing(tables.tells, ["tells"]);
  const kind = bothWays(tables.kind, tables.plainly, KINDS);
  const aim = weighing(tables.aim, ["right"]);
  const described = describer(layering(tables.described, COMPONENTS));
  const called = describer(layering(tables.called, COMPONENTS));
  const kept = layering(tables.kept, ["kept"]);
  const date = weighing(tables.date, ["right"]);
  const where = weighing(tables.where, ["right"]);
  const exposure = layering(tables.exposure, ["since"]);
  const usage = layering(tables.usage, ["used"]);
  const cost = weighing(tables.cost, ["paid"]);
  const material = weighing(tables.material, ["in"]);
  const action = weighing(tables.action, ACTIONS);
  const outcome = bothWays(tables.outcomeLayers, tables.outcome, OUTCOMES);
  return {
    tells: (signs) => chances(tells, signs)[0] ?? 0,
    kind: (signs) => {
      const rated = kind(signs);
      return Object.fromEntries(KINDS.map((each, at) => [each, rated[at] ?? 0])) as Chances;
    },
    described: (tokens, at) => {
      const rated = means([...described(tokens, at)], [...called(tokens, at)]);
      return new Map(COMPONENTS.map((each, nth) => [each, rated[nth] ?? 0]));
    },
    aim: (signs) => shares(aim, signs),
    kept: (signs) => layered(kept, signs)[0] ?? 0,
    date: (signs) => shares(date, signs),
    where: (signs) => shares(where, signs),
    exposure: (signs) => layered(exposure, signs)[0] ?? 0,
    usage: (signs) => layered(usage, signs)[0] ?? 0,
    cost: (signs) => chances(cost, signs)[0] ?? 0,
    material: (signs) => chances(material, signs)[0] ?? 0,
    action: (signs) => likeliest(ACTIONS, parts(action, signs)).value,
    outcome: (signs) => {
      const { value, sure } = likeliest(OUTCOMES, outcome(signs));
      return { outcome: value, sure };
    },
  };
};

export const LEARNT: Judges = judgesBy({ ...places, ...fields });
