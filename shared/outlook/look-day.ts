import type { Consequence } from "../vocabulary.ts";
import type { Context, Course } from "./course.ts";
import { type Day, dayOf } from "./days.ts";
import { type LookPlan, planLooks } from "./look-plan.ts";
import { publishedLimit } from "./published.ts";
import { FIRST_LOOK_DAYS, firstLookAfter } from "./wear.ts";

/** What set the day of the next look. */
export type LookReason = "least-cost" | "first-use" | "published" | "departure" | "partly" | "later";

type Choice = { readonly day: Day; readonly reason: LookReason };

const HORIZON_DAYS = 3 * 365;
/** Days that lie at least between a look and the next one, so that nobody is pestered. */
const LEAST_DAYS = { safety: 3, water: 7, use: 7, comfort: 14 } as const;
/** A look before leaving is put so many days before, to leave time for mending. */
const BEFORE_LEAVING_DAYS = 2;
/** A look that is so fresh on leaving need not be repeated for it. */
const FRESH_DAYS = 21;
const TRIES = 6;

/** The least-cost plan; for safety its daily cost is raised until the share of unnoticed time is allowed. */
const planOf = (course: Course, consequence: Consequence, { use, settings }: Context): LookPlan => {
  const { start, wear } = course.attempt;
  const horizon = Math.max(0, use.today - start) + HORIZON_DAYS;
  const holding = (day: number) => course.holdsOn(start + day);
  const costs = {
    look: settings.lookCost[wear.access],
    day: settings.dayCost[consequence],
    hidden: Math.max(wear.hidden, 0.01),
  };
  let plan = planLooks(holding, horizon, costs);
  if (consequence !== "safety") return plan;
  for (let round = 0, price = costs.day; round < TRIES; round++) {
    const share = plan.unnoticedShare();
    if (share <= settings.unnoticedShare) break;
    price *= ((1.1 * share) / settings.unnoticedShare) ** 2;
    plan = planLooks(holding, horizon, { ...costs, day: price });
  }
  return plan;
};

/** The day on which a new fix has had its first real use. */
const firstUseDay = ({ attempt }: Course, { use }: Context): Day => {
  const { start, wear } = attempt;
  const enough = wear.axis === "calendar" ? undefined : firstLookAfter(wear.axis);
  if (enough === undefined || wear.axis === "calendar") return start + FIRST_LOOK_DAYS;
  let day = start + 1;
  while (day < start + 4 * FIRST_LOOK_DAYS && use.between(wear.axis, start, day) < enough) day++;
  return day;
};

const earlier = (one: Choice, day: Day, reason: LookReason): Choice =>
  day < one.day ? { day, reason } : one;

/** Failures that mostly show by themselves need no early look. */
const SHOWS_ITSELF = 0.3;

const beforeLeaving = (choice: Choice, base: Day, looked: boolean, { trip, use }: Context): Choice => {
  if (trip === null) return choice;
  const [from, to] = [dayOf(trip.from), dayOf(trip.to)];
  const latest = from - BEFORE_LEAVING_DAYS;
  if (from <= use.today || choice.day <= latest || choice.day > to) return choice;
  if (looked && base >= from - FRESH_DAYS) return choice;
  return { day: Math.max(use.today, latest), reason: "departure" };
};

/** The day of the next look and what set it. A later good look never gives an earlier day. */
export const lookDay = (course: Course, consequence: Consequence, context: Context): Choice => {
  const { attempt, base } = course;
  const last = attempt.looks.at(-1);
  const fresh = last === undefined && base === attempt.start;
  const best = attempt.start + planOf(course, consequence, context).next(base - attempt.start);
  let choice: Choice = { day: Math.max(best, base + LEAST_DAYS[consequence]), reason: "least-cost" };
  if (last?.outcome === "partly") choice = { day: Math.ceil((base + choice.day) / 2), reason: "partly" };
  choice = earlier(choice, publishedLimit(attempt.record.fields.component, base, context.use), "published");
  if (fresh && attempt.wear.hidden >= SHOWS_ITSELF)
    choice = earlier(choice, firstUseDay(course, context), "first-use");
  choice = beforeLeaving(choice, base, last !== undefined, context);
  const notBefore = context.notBefore === null ? choice.day : dayOf(context.notBefore);
  return notBefore > choice.day ? { day: notBefore, reason: "later" } : choice;
};
