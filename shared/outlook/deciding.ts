import type { KeptRecord } from "../history.ts";
import { type ComponentId, consequenceOf } from "../vocabulary.ts";
import { ageingPace } from "./age.ts";
import { breakEvenPresent, capitalRecovery } from "./annual-cost.ts";
import { type Attempt, attemptOf } from "./attempt.ts";
import type { Decision, DecisionInput, MoneyGiven, Resolved, WeakPoint } from "./decision.ts";
import { turning, verdict, yearlyCosts } from "./decision-price.ts";
import { hasFailed, predictNext, waysOf } from "./decision-ways.ts";
import { type FixKind, fixKindOf } from "./priors.ts";
import { wearOf } from "./wear.ts";
import { medianYears, presentOf, stretchFor } from "./worth.ts";

const REPLACING = new Set(["replace", "install"]);
const isMend = ({ record }: Attempt) => !REPLACING.has(record.fields.action ?? "");

/** Stands for a rate of 0. */
const LEAST_RATE = 1e-6;

/** Materials of a mend of which no price is known (judgement). */
const USUAL_MEND = 25;
const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

const NEW_PART = {
  kind: "repair",
  action: "replace",
  where: null,
  materials: [],
  date: null,
  outcome: null,
} as const;

const kindOfNew = (component: ComponentId): FixKind => {
  const kind = fixKindOf({
    ...NEW_PART,
    component,
    exposure: [],
    cost: null,
    fault: null,
    due: null,
    materials: [],
  });
  if (kind === undefined) throw new Error(`No kind of fix covers replacing the component "${component}".`);
  return kind;
};

const priceOf = (line: readonly KeptRecord[], replacing: boolean): number | null =>
  mean(
    line.flatMap(({ fields, removed }) =>
      !removed && fields.cost !== null && REPLACING.has(fields.action ?? "") === replacing
        ? [fields.cost]
        : [],
    ),
  );

const weakPoints = (
  component: ComponentId,
  facts: Resolved,
  known: MoneyGiven,
  failures: number,
): WeakPoint[] => {
  const weak: WeakPoint[] = [];
  if (failures < 2) weak.push(failures === 0 ? { is: "no failure yet" } : { is: "one failure" });
  if (known.failureCost === null) weak.push({ is: "guessed failure cost", amount: facts.failureCost });
  if (known.mendCost === null) weak.push({ is: "guessed mend cost", amount: facts.mendCost });
  if (known.replaceYears === null) weak.push({ is: "guessed years", years: facts.replaceYears });
  weak.push({ is: "own hours" });
  if (consequenceOf(component) === "safety") weak.push({ is: "safety" });
  return weak;
};

/** Given figures first, then those of the records. */
const knownOf = ({ given, line }: DecisionInput): MoneyGiven => ({
  ...given,
  mendCost: given.mendCost ?? priceOf(line, false),
  replaceCost: given.replaceCost ?? priceOf(line, true),
});

const factsOf = (
  input: DecisionInput,
  known: MoneyGiven,
  attempts: readonly Attempt[],
  ageing: number,
): Resolved => {
  const { component, settings } = input;
  const replacements = attempts.filter((one) => !isMend(one));
  return {
    mendCost: known.mendCost ?? USUAL_MEND,
    replaceCost: known.replaceCost,
    replaceYears:
      known.replaceYears ?? medianYears(predictNext(kindOfNew(component), replacements, settings), ageing),
    failureCost: known.failureCost ?? settings.failureCost[consequenceOf(component)],
  };
};

/** Below this price, fitted, a new one comes to less a year than mending. */
const breakEvenPrice = ({ failureCost, replaceYears }: Resolved, mend: number, rate: number): number => {
  const recovery = capitalRecovery(rate, replaceYears);
  return Math.max(0, (mend - failureCost * (recovery - rate)) / recovery);
};

/** Mending again against replacing, by equivalent annual cost; undefined when nothing on the line was ever mended. */
export const decide = (input: DecisionInput): Decision | undefined => {
  const { component, line, settings, use } = input;
  const attempts = line.flatMap((record) => attemptOf(record, line, input) ?? []);
  const mends = attempts.filter(isMend);
  const last = mends.toSorted((a, b) => a.start - b.start).at(-1);
  if (last === undefined) return undefined;
  const ageing = ageingPace(wearOf(component), use);
  const rate = Math.max(LEAST_RATE, settings.discountRate);
  const known = knownOf(input);
  const facts = factsOf(input, known, attempts, ageing);
  const next = predictNext(last.kind, attempts, settings);
  const present = presentOf(next, ageing, rate);
  const price = (figures: Resolved) => yearlyCosts(figures, present, rate);
  const { mend, replace } = price(facts);
  const years = (yearly: number) =>
    medianYears(next, ageing) *
    stretchFor(next, ageing, rate, breakEvenPresent(rate, facts.mendCost, facts.failureCost, yearly));
  return {
    ways: waysOf(attempts, ageing, settings),
    mendPerYear: mend,
    replacePerYear: replace,
    breakEvenYears: replace === null ? null : years(replace),
    breakEvenPrice: breakEvenPrice(facts, mend, rate),
    recommend: verdict({ mend, replace }),
    missing: turning(known, facts, price),
    weak: weakPoints(component, facts, known, mends.filter(hasFailed).length),
    facts,
  };
};
