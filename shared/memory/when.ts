import { Temporal } from "temporal-polyfill";
import { type DaySpan, daySpan } from "../edtf.ts";
import type { Hemisphere, Moment } from "../reading.ts";
import type { Edtf } from "../record.ts";

/** The civil day on which something was said. */
export const dayOf = (moment: Moment): Temporal.PlainDate =>
  Temporal.Instant.from(moment.said).toZonedDateTimeISO(moment.zone).toPlainDate();

export const spanOf = (date: Edtf | null, hemisphere: Hemisphere): DaySpan | undefined =>
  date === null ? undefined : daySpan(date, hemisphere);

export const spanDays = (span: DaySpan): number => span.from.until(span.to).days;

/** Whether one date lies wholly after another; false where either is not known. */
export const isAfter = (one: Edtf | null, other: Edtf | null, hemisphere: Hemisphere): boolean => {
  const [late, early] = [spanOf(one, hemisphere), spanOf(other, hemisphere)];
  return late !== undefined && early !== undefined && Temporal.PlainDate.compare(late.from, early.to) >= 0;
};

const gapDays = (one: DaySpan, other: DaySpan): number => {
  const [early, late] = Temporal.PlainDate.compare(one.from, other.from) <= 0 ? [one, other] : [other, one];
  return Math.max(0, early.to.until(late.from).days);
};

export type WhenLikeness = "same" | "within" | "near" | "apart" | "unknown";

/**
 * How two accounts of a date agree: the one may be vaguer than the other. Memory slips with distance: a date told
 * `daysAgo` later is near while it misses by less than a fifth of that (a slip of our choosing, no source).
 */
export const compareWhen = (
  told: Edtf | null,
  kept: Edtf | null,
  hemisphere: Hemisphere,
  today: Temporal.PlainDate,
): WhenLikeness => {
  const one = spanOf(told, hemisphere);
  const other = spanOf(kept, hemisphere);
  if (one === undefined || other === undefined) return "unknown";
  if (one.from.equals(other.from) && one.to.equals(other.to)) return "same";
  const gap = gapDays(one, other);
  const meets =
    Temporal.PlainDate.compare(one.from, other.to) < 0 && Temporal.PlainDate.compare(other.from, one.to) < 0;
  if (meets) return "within";
  const vague = told?.includes("~") === true || spanDays(one) > 1;
  return vague && gap <= one.from.until(today).days / 5 ? "near" : "apart";
};
