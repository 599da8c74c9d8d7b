import { halfGood, letGo, type Observation } from "./life.ts";
import type { Seen } from "./seen.ts";

/** Chance that an owner who retells old work would not mention that it had failed. */
const UNMENTIONED = 0.3;
/** The same among failures that are hidden with such a chance: what shows itself is not forgotten. */
export const unmentionedShare = (hidden: number): number => Math.min(UNMENTIONED, hidden);
/** How far off a told lifetime may be. */
const TOLD_BAND = [0.7, 1.3] as const;

/** What is known of a fix besides its looks, in ages at the typical pace. */
export type Silence = {
  /** Age until which nobody complained: today, or the end of its service. */
  readonly age: number;
  /** Age at which old work was told of without a word of trouble; 0 for fresh work. */
  readonly retoldAge: number;
  /** Share of failures that nobody would notice without looking. */
  readonly hidden: number;
};

/** Nobody complained: it holds, or failed unseen since the last good look, or before it was told of. */
const unheard = (goodAge: number, silence: Silence): Observation => {
  const { age, retoldAge, hidden } = silence;
  const unmentioned = goodAge > 0 ? 0 : retoldAge > 0 ? unmentionedShare(hidden) : 0;
  const lower = Math.max(goodAge, retoldAge);
  return {
    lower,
    upper: Math.max(lower, age),
    atLower: hidden - unmentioned,
    atUpper: 1 - hidden,
    free: unmentioned,
  };
};

/**
 * The one observation that a fix's looks and the silence around them amount to. What was found by a look failed some
 * time since the last good one; what showed itself failed on that day: the interval is narrowed by the share that shows.
 */
export const observe = (looks: readonly Seen[], silence: Silence): Observation => {
  const last = looks.at(-1);
  const good = looks
    .filter((look) => look.outcome === "holding")
    .reduce((oldest, look) => Math.max(oldest, look.age), 0);
  if (last === undefined || last.outcome === "holding") return unheard(good, silence);
  const seen = last.outcome === "partly" ? halfGood : letGo;
  if (last.told) return seen(Math.min(good, TOLD_BAND[0] * last.age), TOLD_BAND[1] * last.age);
  const before = Math.min(good, last.age);
  return seen(last.age - silence.hidden * (last.age - before), last.age);
};
