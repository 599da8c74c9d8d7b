import type { Consequence } from "../vocabulary.ts";
import { constantInterval } from "./constant-interval.ts";
import { type Context, type Course, dayAtAge } from "./course.ts";
import { type Day, dayOf } from "./days.ts";
import { type LookPlan, planLooks, planSafely } from "./look-plan.ts";
import { unmentionedShare } from "./observe.ts";
import { ageAt, outlives } from "./prediction.ts";
import { publishedLimit } from "./published.ts";
import { dayOfUse } from "./use-day.ts";
import { FIRST_LOOK_DAYS, firstLookAfter } from "./wear.ts";

/** What set the day of the next look. */
export type LookReason = "least-cost" | "first-use" | "published" | "departure" | "partly" | "later";

export type LookChoice = {
  readonly day: Day;
  readonly reason: LookReason;
  /** The published interval that set it, in words. */
  readonly rule?: string;
};

const LEAST_HORIZON_DAYS = 500;
const INTERVALS_AHEAD = 4;
/** The share of unnoticed time is read off the lattice itself, which is finer for it. */
const FINER_FOR_SHARES = 2;
/** Days that lie at least between a look and the next one, so that nobody is pestered. */
const LEAST_DAYS = { safety: 3, water: 7, use: 7, comfort: 14 } as const;
/** A look before leaving is put so many days before, to leave time for mending. */
const BEFORE_LEAVING_DAYS = 2;
/** A look that is so fresh on leaving need not be repeated for it. */
const FRESH_DAYS = 21;

/** A horizon several looks beyond an age, the same for ages that are near each other. */
const horizonBeyond = (age: number, interval: number): number => {
  let horizon = LEAST_HORIZON_DAYS;
  while (horizon < age + INTERVALS_AHEAD * interval) horizon *= 2;
  return horizon;
};

/** Failure-finding interval of reliability-centred maintenance for a constant rate, to first order: the gap is twice the allowed share of the mean life. */
const failureFinding = (medianDays: number, hidden: number, share: number): number =>
  (2 * share * medianDays) / (Math.LN2 * hidden);

/** The least-cost plan over age; for safety its daily cost is raised until the share of unnoticed time is allowed. */
const planOf = (course: Course, consequence: Consequence, { settings }: Context): LookPlan => {
  const { attempt, prediction, ageOn, base, pace } = course;
  const costs = {
    look: settings.lookCost[attempt.wear.access],
    day: settings.dayCost[consequence] / pace,
    hidden: Math.max(attempt.wear.hidden, 0.01),
  };
  const usual = constantInterval(Math.LN2 / prediction.medianDays, costs);
  const held = ageOn(base);
  const horizon = horizonBeyond(held, usual);
  if (consequence !== "safety") return planLooks(prediction, { horizon, interval: usual }, costs, held);
  const bound = failureFinding(prediction.medianDays, costs.hidden, settings.unnoticedShare);
  const interval = Math.min(usual, bound) / FINER_FOR_SHARES;
  return planSafely(prediction, { horizon, interval }, costs, settings.unnoticedShare);
};

const LATEST_FIRST_LOOK_DAYS = 4 * FIRST_LOOK_DAYS;

/** The day on which a new fix has had its first real use. */
const firstUseDay = ({ attempt }: Course, { use }: Context): Day => {
  const { start, wear } = attempt;
  const enough = wear.axis === "calendar" ? undefined : firstLookAfter(wear.axis);
  if (enough === undefined || wear.axis === "calendar") return start + FIRST_LOOK_DAYS;
  return Math.min(start + LATEST_FIRST_LOOK_DAYS, dayOfUse(use, wear.axis, start, enough));
};

/** Failures that mostly show by themselves need no early look. */
const SHOWS_ITSELF = 0.3;

/** The look after the first use, as long as no look has come after it: a good word before that tells little. */
const afterFirstUse = (
  choice: LookChoice,
  course: Course,
  consequence: Consequence,
  context: Context,
): LookChoice => {
  const { attempt, base } = course;
  const last = attempt.looks.at(-1);
  const unseen = last === undefined || (last.outcome === "holding" && !last.told);
  if (!unseen || attempt.wear.hidden < SHOWS_ITSELF) return choice;
  const used = firstUseDay(course, context);
  if (base >= used) return choice;
  const day = last === undefined ? used : Math.max(used, base + LEAST_DAYS[consequence]);
  return day < choice.day ? { day, reason: "first-use" } : choice;
};

const beforeLeaving = (
  choice: LookChoice,
  base: Day,
  looked: boolean,
  { trip, use }: Context,
): LookChoice => {
  if (trip === null) return choice;
  const [from, to] = [dayOf(trip.from), dayOf(trip.to)];
  const latest = from - BEFORE_LEAVING_DAYS;
  if (from <= use.today || choice.day <= latest || choice.day > to) return choice;
  if (looked && base >= from - FRESH_DAYS) return choice;
  return { day: Math.max(use.today, latest), reason: "departure" };
};

/** Days over which looks at work that was told of long after are spread, as many such are often told in one evening. */
const SPREAD_DAYS = { safety: 14, water: 30, use: 45, comfort: 60 } as const;
const STRIDE = 11;

/**
 * The least-cost day. Old work of which no look is known may have failed before it was told of: it is planned as if
 * last seen good at an earlier age that leaves the same chance of that, and its looks are spread out.
 */
const bestDay = (course: Course, consequence: Consequence, context: Context): Day => {
  const { attempt, base, ageOn, prediction } = course;
  const { next } = planOf(course, consequence, context);
  const least = base + LEAST_DAYS[consequence];
  const asSeen = Math.max(least, dayAtAge(course, next(ageOn(base))));
  if (attempt.looks.length > 0 || !attempt.retold) return asSeen;
  const failed = 1 - outlives(prediction, ageOn(base));
  const seen = 1 - unmentionedShare(attempt.wear.hidden) / Math.max(attempt.wear.hidden, 0.01);
  const due = dayAtAge(course, next(ageAt(prediction, 0, 1 - failed * seen)));
  const spread = least + ((attempt.record.id * STRIDE) % SPREAD_DAYS[consequence]);
  return Math.min(asSeen, Math.max(due, spread));
};

/**
 * The day of the next look and what set it. The best age of the next look does not depend on use since the last one, so
 * that more use only ever brings its day nearer; and a later good look never gives an earlier day.
 */
export const lookDay = (course: Course, consequence: Consequence, context: Context): LookChoice => {
  const { attempt, base } = course;
  const last = attempt.looks.at(-1);
  let choice: LookChoice = { day: bestDay(course, consequence, context), reason: "least-cost" };
  if (last?.outcome === "partly") choice = { day: Math.ceil((base + choice.day) / 2), reason: "partly" };
  const published = publishedLimit(attempt.record.fields.component, base, context.use);
  if (published !== undefined && published.day < choice.day) choice = { ...published, reason: "published" };
  choice = afterFirstUse(choice, course, consequence, context);
  choice = beforeLeaving(choice, base, last !== undefined, context);
  const notBefore = context.notBefore === null ? choice.day : dayOf(context.notBefore);
  return notBefore > choice.day ? { day: notBefore, reason: "later" } : choice;
};
