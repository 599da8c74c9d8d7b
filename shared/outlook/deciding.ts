import type { KeptRecord } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import { type ComponentId, consequenceOf } from "../vocabulary.ts";
import { ageingPace } from "./age.ts";
import { annualCost, breakEvenYears, capitalRecovery, mendingCost } from "./annual-cost.ts";
import { type Attempt, attemptOf } from "./attempt.ts";
import { believe, evidenceOf } from "./belief.ts";
import { emptyWeights } from "./grid.ts";
import type { Prediction } from "./prediction.ts";
import { type FixKind, fixKindOf } from "./priors.ts";
import type { Settings } from "./settings.ts";
import type { Use } from "./use.ts";
import { wearOf } from "./wear.ts";
import { medianYears, worth } from "./worth.ts";

export type MoneyGiven = {
  /** Materials of one more mend. */
  readonly mendCost: number | null;
  /** The new part, fitted. */
  readonly replaceCost: number | null;
  /** Years a new part is expected to last; from the prior when null. */
  readonly replaceYears: number | null;
  /** What a failure costs beyond the mending: the wet floor, the lost days. */
  readonly failureCost: number | null;
};

export type MissingNumber = keyof MoneyGiven;

/** How one way of fixing has done on this line. */
export type Way = {
  readonly say: string;
  readonly tries: number;
  readonly failed: number;
  /** Expected years of the next one of its kind here. */
  readonly typicalYears: number;
};

export type Decision = {
  readonly ways: readonly Way[];
  readonly mendPerYear: number;
  /** Null as long as nobody knows what replacing costs. */
  readonly replacePerYear: number | null;
  /** Years that a mend must hold for mending to be as cheap as replacing. */
  readonly breakEvenYears: number | null;
  /** Below this price of a new one, fitted, replacing is cheaper. */
  readonly breakEvenPrice: number;
  readonly recommend: "mend" | "replace" | "either" | null;
  /** The one number that could turn the answer, if there is one. */
  readonly missing: MissingNumber | null;
  readonly weak: readonly string[];
  readonly facts: Resolved;
};

export type DecisionInput = {
  readonly component: ComponentId;
  /** Every record of the trouble; intentions with a price count for the price. */
  readonly line: readonly KeptRecord[];
  readonly given: MoneyGiven;
  readonly use: Use;
  readonly settings: Settings;
  readonly hemisphere: Hemisphere;
};

/** The figures that were used, given or assumed. */
export type Resolved = {
  readonly mendCost: number;
  readonly replaceCost: number | null;
  readonly replaceYears: number;
  readonly failureCost: number;
};

/** Materials of a mend of which no price is known (judgement). */
const USUAL_MEND = 25;
const REPLACING = new Set(["replace", "install"]);
const isMend = ({ record }: Attempt) => !REPLACING.has(record.fields.action ?? "");

const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

const NO_PEERS = { sum: emptyWeights(), count: 0, without: [] };

const predictNext = (kind: FixKind, attempts: readonly Attempt[], settings: Settings): Prediction =>
  believe(kind, attempts.map(evidenceOf), NO_PEERS, settings);

const waysOf = (attempts: readonly Attempt[], ageing: number, settings: Settings): Way[] => {
  const kinds = new Map(attempts.map(({ kind }) => [kind.id, kind]));
  return [...kinds.values()].map((kind) => {
    const tries = attempts.filter((attempt) => attempt.kind.id === kind.id);
    return {
      say: kind.say,
      tries: tries.length,
      failed: tries.filter(({ looks }) => looks.at(-1)?.outcome === "failed").length,
      typicalYears: medianYears(predictNext(kind, attempts, settings), ageing),
    };
  });
};

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

type Priced = { readonly mend: number; readonly replace: number | null };

const yearlyCosts = (facts: Resolved, life: { present: number; years: number }, rate: number): Priced => {
  const mend = mendingCost(rate, facts.mendCost, facts.failureCost, life.present, 1 / life.years);
  const end = facts.failureCost * (capitalRecovery(rate, facts.replaceYears) - rate);
  const replace =
    facts.replaceCost === null
      ? null
      : annualCost(rate, { first: facts.replaceCost, years: facts.replaceYears, yearly: end });
  return { mend, replace };
};

const CLEAR = 1.15;

const verdict = ({ mend, replace }: Priced): Decision["recommend"] => {
  if (replace === null) return null;
  if (replace * CLEAR < mend) return "replace";
  return mend * CLEAR < replace ? "mend" : "either";
};

/** How far a figure that nobody gave may be off. */
const DOUBT = 3;

const turning = (
  given: MoneyGiven,
  facts: Resolved,
  price: (facts: Resolved) => Priced,
): MissingNumber | null => {
  if (facts.replaceCost === null) return "replaceCost";
  const swings = (["mendCost", "replaceYears", "failureCost"] as const)
    .filter((name) => given[name] === null)
    .map((name) => {
      const [low, high] = [1 / DOUBT, DOUBT].map((times) => price({ ...facts, [name]: facts[name] * times }));
      const gap = (one: Priced | undefined) => (one === undefined ? 0 : one.mend - (one.replace ?? 0));
      return { name, turns: gap(low) * gap(high) < 0, swing: Math.abs(gap(high) - gap(low)) };
    })
    .filter(({ turns }) => turns)
    .toSorted((a, b) => b.swing - a.swing);
  return swings[0]?.name ?? null;
};

const weakPoints = (input: DecisionInput, facts: Resolved, known: MoneyGiven, failures: number): string[] => {
  const weak: string[] = [];
  if (failures < 2)
    weak.push(
      failures === 0
        ? "none of these mends has failed yet, so its life is a guess"
        : "it rests on one failure",
    );
  if (known.failureCost === null) weak.push(`I put what a failure costs you at ${facts.failureCost}`);
  if (known.mendCost === null) weak.push(`I put the stuff for a mend at ${facts.mendCost}`);
  if (known.replaceYears === null)
    weak.push(`I take a new one to last about ${Math.round(facts.replaceYears)} years`);
  weak.push("your own hours are not counted");
  if (consequenceOf(input.component) === "safety")
    weak.push("money isn't the point where somebody can get hurt");
  return weak;
};

/** Mending again against replacing, by equivalent annual cost; undefined when nothing on the line was ever mended. */
export const decide = (input: DecisionInput): Decision | undefined => {
  const { component, line, settings, use } = input;
  const attempts = line.flatMap((record) => attemptOf(record, line, input) ?? []);
  const mends = attempts.filter(isMend);
  const last = mends.toSorted((a, b) => a.start - b.start).at(-1);
  if (last === undefined) return undefined;
  const ageing = ageingPace(wearOf(component), use);
  const known: MoneyGiven = {
    ...input.given,
    mendCost: input.given.mendCost ?? priceOf(line, false),
    replaceCost: input.given.replaceCost ?? priceOf(line, true),
  };
  const fresh = predictNext(
    kindOfNew(component),
    attempts.filter((one) => !isMend(one)),
    settings,
  );
  const facts: Resolved = {
    mendCost: known.mendCost ?? USUAL_MEND,
    replaceCost: known.replaceCost,
    replaceYears: known.replaceYears ?? medianYears(fresh, ageing),
    failureCost: known.failureCost ?? settings.failureCost[consequenceOf(component)],
  };
  const rate = settings.discountRate;
  const life = worth(predictNext(last.kind, attempts, settings), ageing, rate);
  const price = (figures: Resolved) => yearlyCosts(figures, life, rate);
  const { mend, replace } = price(facts);
  const endOfNew = facts.failureCost * (capitalRecovery(rate, facts.replaceYears) - rate);
  return {
    ways: waysOf(attempts, ageing, settings),
    mendPerYear: mend,
    replacePerYear: replace,
    breakEvenYears:
      replace === null ? null : breakEvenYears(rate, facts.mendCost, facts.failureCost, replace),
    breakEvenPrice: Math.max(0, (mend - endOfNew) / capitalRecovery(rate, facts.replaceYears)),
    recommend: verdict({ mend, replace }),
    missing: turning(known, facts, price),
    weak: weakPoints(
      input,
      facts,
      known,
      mends.filter(({ looks }) => looks.at(-1)?.outcome === "failed").length,
    ),
    facts,
  };
};
