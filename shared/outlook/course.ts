import type { Temporal } from "temporal-polyfill";
import { ageBetween, ageingPace, mixedAge } from "./age.ts";
import type { Attempt } from "./attempt.ts";
import { type Day, dayOf } from "./days.ts";
import { unmentionedShare } from "./observe.ts";
import { outlives, type Prediction } from "./prediction.ts";
import type { Settings } from "./settings.ts";
import { type Trip, type Use, useOnTrip } from "./use.ts";
import { TYPICAL_PER_DAY, type Wear } from "./wear.ts";

export type Context = {
  readonly use: Use;
  readonly trip: Trip | null;
  readonly settings: Settings;
  /** Asked to be left alone until this day ("later"). */
  readonly notBefore: Temporal.PlainDate | null;
};

/** One fix in time: what it has been through and how likely it is to hold. */
export type Course = {
  readonly attempt: Attempt;
  readonly prediction: Prediction;
  /** Day from which the plan counts: the last look, or the telling of old work, or the fix itself. */
  readonly base: Day;
  /** Age in days at the typical pace on a day. */
  readonly ageOn: (day: Day) => number;
  readonly holdsOn: (day: Day) => number;
  /** Days of ageing that a calendar day brought at the rig's pace when the fix was made. */
  readonly pace: number;
};

export const courseOf = (attempt: Attempt, prediction: Prediction, use: Use): Course => {
  const { start, wear, looks, toldOn, retold } = attempt;
  const last = looks.at(-1);
  const base = last?.day ?? (retold ? toldOn : start);
  const counted = countedFrom(start, wear, use);
  const ageOn = last?.told ? reAged(counted, last.day, last.age) : counted;
  const pace = ageingPace(wear, use, start);
  return { attempt, prediction, base, ageOn, holdsOn: holding(prediction, ageOn), pace };
};

const countedFrom = (start: Day, wear: Wear, use: Use) => (day: Day) => ageBetween(wear, use, start, day);

const holding = (prediction: Prediction, ageOn: (day: Day) => number) => (day: Day) =>
  outlives(prediction, ageOn(day));

/** Ages drawn through an age that was told for a day. */
const reAged = (counted: (day: Day) => number, day: Day, age: number) => {
  const then = counted(day);
  return (on: Day) => (on >= day ? age + counted(on) - then : then <= 0 ? 0 : (age * counted(on)) / then);
};

/** Chance to be failed and unnoticed on a day, given that nobody has said so. */
export const goneBy = ({ attempt, holdsOn, base }: Course, day: Day): number => {
  const [held, now] = [holdsOn(base), holdsOn(Math.max(day, base))];
  const unseenBefore = attempt.looks.length === 0 ? unmentionedShare(attempt.wear.hidden) * (1 - held) : 0;
  const gone = attempt.wear.hidden * (held - now) + unseenBefore;
  return gone / (gone + now);
};

/** Chance that it is still good when a trip is over, as known today. */
export const lastsTrip =
  (course: Course, use: Use) =>
  (trip: Trip): number => {
    const { attempt, ageOn, prediction, holdsOn, base } = course;
    const { wear } = attempt;
    const [from, to] = [Math.max(dayOf(trip.from), use.today), dayOf(trip.to)];
    const useDays =
      wear.axis === "calendar" ? 0 : useOnTrip(wear.axis, trip, use) / TYPICAL_PER_DAY[wear.axis];
    const home = ageOn(from) + mixedAge(wear, Math.max(0, to - from), useDays);
    const goneBefore = goneBy(course, use.today);
    const now = Math.max(use.today, base);
    return (1 - goneBefore) * Math.min(1, outlives(prediction, home) / Math.max(1e-12, holdsOn(now)));
  };

const LONGEST_DAYS = 80 * 365;

/** The first day on which it is so old; where it lies is guessed along the chord, and by halves when that gains little. */
export const dayAtAge = ({ ageOn, attempt }: Course, age: number): Day => {
  let [low, high] = [attempt.start, attempt.start + LONGEST_DAYS];
  let [young, old] = [0, ageOn(high)];
  for (let round = 0; high - low > 1; round++) {
    const share = round % 3 === 2 || old <= young ? 0.5 : (age - young) / (old - young);
    const day = Math.min(high - 1, Math.max(low + 1, Math.floor(low + share * (high - low))));
    const now = ageOn(day);
    if (now < age) [low, young] = [day, now];
    else [high, old] = [day, now];
  }
  return high;
};
