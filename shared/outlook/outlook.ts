import type { Temporal } from "temporal-polyfill";
import type { KeptRecord, RecordId } from "../history.ts";
import type { UseUnit } from "../record.ts";
import { type Consequence, consequenceOf } from "../vocabulary.ts";
import type { Attempt } from "./attempt.ts";
import { type Context, type Course, courseOf, goneBy, lastsTrip } from "./course.ts";
import { type Day, dateOf } from "./days.ts";
import { explainLook } from "./explain.ts";
import { type LifeSpan, lifeSpanOf } from "./life-span.ts";
import { type LookReason, lookDay } from "./look-day.ts";
import type { Prediction } from "./prediction.ts";
import { roundUse } from "./say.ts";
import { lookForOf } from "./signs.ts";
import type { Trip, Use } from "./use.ts";

export type Amount = { readonly count: number; readonly unit: UseUnit };

export type Outlook = {
  readonly record: RecordId;
  readonly consequence: Consequence;
  /** The last look that was answered; null when nobody has looked yet. */
  readonly lastLook: Temporal.PlainDate | null;
  /** May lie in the past when it is overdue. `byUse` is a round figure, counted from today. */
  readonly nextLook: {
    readonly day: Temporal.PlainDate;
    readonly byUse?: Amount;
    readonly reason: LookReason;
  };
  /** Chance that it has let go unnoticed since the last look (since the fix, when there was none). */
  readonly goneSinceLastLook: number;
  /** Chance that it is still good when the trip is over, as known today. */
  readonly lasts: (trip: Trip) => number;
  /** Its whole life, given that it held so far: the middle, and the range that holds eight times in ten. */
  readonly life: LifeSpan;
  /** Why then, in one sentence with the numbers. */
  readonly explain: string;
  /** What to look for. */
  readonly lookFor: string;
};

const USE_COUNTS = 0.4;

const byUse = ({ attempt }: Course, use: Use, day: Day): Amount | undefined => {
  const { axis, useShare } = attempt.wear;
  if (axis === "calendar" || useShare < USE_COUNTS || day <= use.today) return undefined;
  return { count: roundUse(use.between(axis, use.today, day)), unit: axis };
};

export const outlookFrom = (attempt: Attempt, prediction: Prediction, context: Context): Outlook => {
  const { use } = context;
  const course = courseOf(attempt, prediction, use);
  const record: KeptRecord = attempt.record;
  const consequence = consequenceOf(record.fields.component);
  const choice = lookDay(course, consequence, context);
  const { day, reason } = choice;
  const last = attempt.looks.at(-1);
  const counted = byUse(course, use, day);
  const life = lifeSpanOf(course, use);
  const lasts = lastsTrip(course, use);
  const fails = context.trip === null ? null : 1 - lasts(context.trip);
  return {
    record: record.id,
    consequence,
    lastLook: last === undefined ? null : dateOf(last.day),
    nextLook: { day: dateOf(day), reason, ...(counted && { byUse: counted }) },
    goneSinceLastLook: goneBy(course, use.today),
    lasts,
    life,
    explain: explainLook({
      course,
      choice,
      life,
      use,
      gone: goneBy(course, Math.max(day, use.today)),
      fails,
    }),
    lookFor: lookForOf(record.fields, attempt.kind),
  };
};
