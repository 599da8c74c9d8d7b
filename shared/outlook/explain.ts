import { capital } from "../capital.ts";
import { componentName } from "../vocabulary.ts";
import type { Course } from "./course.ts";
import type { LifeSpan } from "./life-span.ts";
import type { LookChoice, LookReason } from "./look-day.ts";
import {
  chanceWords,
  dayWords,
  figures,
  monthsRange,
  monthsWords,
  roundUse,
  useWords,
  withArticle,
} from "./say.ts";
import type { Use } from "./use.ts";
import type { Access, Axis } from "./wear.ts";

type Facts = {
  readonly course: Course;
  readonly choice: LookChoice;
  readonly life: LifeSpan;
  readonly use: Use;
  /** Chance that it has let go unnoticed by the day of the look, or by now when that is past. */
  readonly gone: number;
  /** Chance that it does not last the announced trip, as known today. */
  readonly fails: number | null;
};

/** "a glassed-over repair", "a new dump valve". */
const kindWords = ({ attempt }: Course): string =>
  withArticle(attempt.kind.say.replace("{component}", componentName(attempt.record.fields.component)));

/** "usually lasts about 3 years (14 months to 11 years)", in whatever unit wears it. */
const lifeWords = ({ typical, low, high, unit }: LifeSpan): string =>
  unit === "months"
    ? `about ${monthsWords(typical)} (${monthsRange(low, high)})`
    : `about ${useWords(typical, unit)} (${figures(roundUse(low))} to ${useWords(high, unit)})`;

const sinceWords = ({ course, use }: Facts): string => {
  const last = course.attempt.looks.at(-1);
  if (last !== undefined)
    return `it was ${last.outcome === "partly" ? "only partly right" : "good"} ${dayWords(last.day, use.today)}`;
  return course.attempt.retold
    ? "I've not heard how it has held since you told me of it"
    : `nobody has looked since it was done ${dayWords(course.attempt.start, use.today)}`;
};

const oddsWords = ({ gone, choice, use }: Facts): string => {
  const by = choice.day <= use.today ? "now" : dayWords(choice.day, use.today).replace(/^(?:on|in) /, "");
  return `by ${by} it's ${chanceWords(gone)} that it has quietly let go`;
};

const EFFORT: Record<Access, string> = {
  under: "the crawl underneath pays",
  roof: "the climb pays",
  outside: "a look pays",
  inside: "a look pays",
};

const FIRST_USE: Record<Axis, string> = {
  miles: "after the first hundred miles or so",
  cycles: "after a few times in and out",
  fills: "after the first fills",
  storms: "after the first good rain",
  trips: "after the first trip",
  nights: "after the first few weeks",
  calendar: "after the first few weeks",
};

const stillNew = ({ course, use }: Facts): boolean => use.today - course.attempt.start < 90;

const leastCost = (facts: Facts): string =>
  `${capital(sinceWords(facts))}, and ${kindWords(facts.course)} like that usually lasts ${lifeWords(facts.life)}; ${oddsWords(facts)}, which is when ${EFFORT[facts.course.attempt.wear.access]}.`;

const REASONS: Record<LookReason, (facts: Facts) => string> = {
  "first-use": (facts) =>
    stillNew(facts)
      ? `Fresh work shows its weak spots early, and ${chanceWords(facts.course.attempt.kind.dud)} such jobs never really takes: worth a look ${FIRST_USE[facts.course.attempt.wear.axis]}.`
      : leastCost(facts),
  "least-cost": leastCost,
  published: (facts) =>
    `${capital(sinceWords(facts))} and may well be fine (${oddsWords(facts)}), but the published advice is a look ${facts.choice.rule ?? "now and then"}.`,
  departure: (facts) =>
    `It would come due on the road, so better before you leave: ${sinceWords(facts)}, and it's ${chanceWords(facts.fails ?? facts.gone)} that it won't last the trip.`,
  partly: (facts) => `${capital(sinceWords(facts))}, so it gets half the usual time; ${oddsWords(facts)}.`,
  later: (facts) => `You put this one off; ${sinceWords(facts)}, and ${oddsWords(facts)}.`,
};

/** Why the look falls on that day, in one sentence with the numbers that were used. */
export const explainLook = (facts: Facts): string => REASONS[facts.choice.reason](facts);
