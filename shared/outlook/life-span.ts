import type { UseUnit } from "../record.ts";
import { type Course, dayAtAge } from "./course.ts";
import type { Day } from "./days.ts";
import { ageAt } from "./prediction.ts";
import type { Use } from "./use.ts";

/** A whole life from the day of the fix: the middle, and the range that holds eight times in ten. */
export type LifeSpan = {
  readonly typical: number;
  readonly low: number;
  readonly high: number;
  readonly unit: UseUnit;
};

const MOSTLY_USE = 0.6;

/** In months, or in the use that wears it where most of its ageing is use and the log tells of it. */
export const lifeSpanOf = (course: Course, use: Use): LifeSpan => {
  const { attempt, prediction, ageOn, base } = course;
  const { axis, useShare } = attempt.wear;
  const held = ageOn(base);
  const days = [0.9, 0.5, 0.1].map((chance) => dayAtAge(course, ageAt(prediction, held, chance)));
  const unit: UseUnit = axis !== "calendar" && useShare >= MOSTLY_USE && use.kept(axis) ? axis : "months";
  const [low, typical, high] = days.map((day: Day) =>
    unit === "months" || axis === "calendar"
      ? (day - attempt.start) / 30.437
      : Math.max(0, use.between(axis, attempt.start, day)),
  );
  return { typical: typical ?? 0, low: low ?? 0, high: high ?? 0, unit };
};
