import type { KeptRecord } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { ComponentId } from "../vocabulary.ts";
import type { Settings } from "./settings.ts";
import type { Use } from "./use.ts";

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
  /** How long those that failed had lasted, in months, shortest first. */
  readonly livedMonths: readonly number[];
  /** Expected years of the next one of its kind here. */
  readonly typicalYears: number;
};

/** What a recommendation rests on without anybody having said it. Amounts are in the owner's currency. */
export type WeakPoint =
  | { readonly is: "no failure yet" | "one failure" | "own hours" | "safety" }
  | { readonly is: "guessed failure cost" | "guessed mend cost"; readonly amount: number }
  | { readonly is: "guessed years"; readonly years: number };

export type Decision = {
  readonly ways: readonly Way[];
  readonly mendPerYear: number;
  /** Null as long as nobody knows what replacing costs. */
  readonly replacePerYear: number | null;
  /** What a mend would have to make, on the middle, for mending to be as cheap as replacing; infinite if nothing would do. */
  readonly breakEvenYears: number | null;
  /** Below this price of a new one, fitted, replacing is cheaper. */
  readonly breakEvenPrice: number;
  readonly recommend: "mend" | "replace" | "either" | null;
  /** The one number that could turn the answer, if there is one. */
  readonly missing: MissingNumber | null;
  readonly weak: readonly WeakPoint[];
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
