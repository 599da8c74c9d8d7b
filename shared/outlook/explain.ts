import { componentName } from "../vocabulary.ts";
import type { Course } from "./course.ts";
import type { Day } from "./days.ts";
import type { LifeSpan } from "./life-span.ts";
import type { LookReason } from "./look-day.ts";
import { capital, chanceWords, dayWords, monthsWords, useWords } from "./say.ts";
import type { Use } from "./use.ts";

type Facts = {
  readonly course: Course;
  readonly day: Day;
  readonly reason: LookReason;
  readonly life: LifeSpan;
  readonly use: Use;
  /** Chance that it has let go unnoticed by the day of the look. */
  readonly gone: number;
};

/** "the lap sealant bead on the roof seam", "the new dump valve". */
const nameOf = ({ course }: Facts): string => {
  const { kind, record } = course.attempt;
  const component = componentName(record.fields.component);
  if (kind.say.includes("{component}")) return `the ${kind.say.replace("{component}", component)}`;
  return `the ${kind.say} on the ${component}`;
};

const amount = (count: number, unit: LifeSpan["unit"]) =>
  unit === "months" ? monthsWords(count) : useWords(count, unit);

/** "two to five years" in whatever unit wears it. */
const rangeWords = ({ low, high, unit }: LifeSpan): string => {
  const [from, to] = [amount(low, unit), amount(high, unit)];
  return from === to ? `about ${to}` : `somewhere between ${from} and ${to}`;
};

const sinceWords = ({ course, use }: Facts): string => {
  const last = course.attempt.looks.at(-1);
  if (last !== undefined)
    return `it was ${last.outcome === "partly" ? "only partly right" : "good"} ${dayWords(last.day, use.today)}`;
  return course.base === course.attempt.start
    ? `nobody has looked since it was done ${dayWords(course.attempt.start, use.today)}`
    : "you told me of it later and haven't said how it looks";
};

const oddsWords = ({ gone, day, use }: Facts): string =>
  day <= use.today
    ? `by now it's ${chanceWords(gone)} that it has let go without showing`
    : `by ${dayWords(day, use.today).replace(/^(?:on|in) /, "")} it's ${chanceWords(gone)} that it has let go without showing`;

const REASONS: Record<LookReason, (facts: Facts) => string> = {
  "first-use": (facts) =>
    `${capital(nameOf(facts))} is new, and ${chanceWords(facts.course.attempt.kind.dud)} of those never really takes: a look after its first use tells.`,
  "least-cost": (facts) =>
    `${capital(sinceWords(facts))}; ${oddsWords(facts)}, and it should last ${rangeWords(facts.life)} in all.`,
  published: (facts) =>
    `${capital(sinceWords(facts))}; it may well be fine (${oddsWords(facts)}), but the published interval for this is up.`,
  departure: (facts) =>
    `It would come due on the road, so look before you leave: ${sinceWords(facts)}, and ${oddsWords(facts)}.`,
  partly: (facts) => `${capital(sinceWords(facts))}, so it gets half the usual time; ${oddsWords(facts)}.`,
  later: (facts) => `You put this one off; ${sinceWords(facts)}, and ${oddsWords(facts)}.`,
};

/** Why the look falls on that day, in one sentence with the numbers that were used. */
export const explainLook = (facts: Facts): string => REASONS[facts.reason](facts);
