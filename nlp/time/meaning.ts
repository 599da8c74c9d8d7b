import type { Period } from "./period.ts";
import type { Meaning } from "./rule.ts";

type Maybe = Period | undefined;

/** What a rule found, if it found anything: `sure` is 0 to 1. */
export const past = (period: Maybe, sure: number): Meaning | undefined =>
  period && { period, direction: "past", sure };
export const future = (period: Maybe, sure: number): Meaning | undefined =>
  period && { period, direction: "future", sure };
/** On the side that was preferred. */
export const either = (period: Maybe, sure: number): Meaning | undefined =>
  period && { period, direction: "either", sure };
