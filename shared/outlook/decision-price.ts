import { annualCost, capitalRecovery, mendingCost } from "./annual-cost.ts";
import type { Decision, MissingNumber, MoneyGiven, Resolved } from "./decision.ts";

/** Money a year of either way; replacing is null as long as its price is not known. */
export type Priced = { readonly mend: number; readonly replace: number | null };

export const yearlyCosts = (facts: Resolved, present: number, rate: number): Priced => {
  const mend = mendingCost(rate, facts.mendCost, facts.failureCost, present);
  const end = facts.failureCost * (capitalRecovery(rate, facts.replaceYears) - rate);
  const replace =
    facts.replaceCost === null
      ? null
      : annualCost(rate, { first: facts.replaceCost, years: facts.replaceYears, yearly: end });
  return { mend, replace };
};

/** How many times dearer one way must be for a clear answer. */
const CLEAR = 1.15;

export const verdict = ({ mend, replace }: Priced): Decision["recommend"] => {
  if (replace === null) return null;
  if (replace * CLEAR < mend) return "replace";
  return mend * CLEAR < replace ? "mend" : "either";
};

/** How far a figure that nobody gave may be off. */
const DOUBT = 3;

/** The figure that nobody gave and that could turn the answer, the strongest one first. */
export const turning = (
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
