import { Temporal } from "temporal-polyfill";
import type { Hemisphere } from "../reading.ts";
import type { Edtf } from "../record.ts";
import type { Period } from "./query.ts";
import { spanDays, spanOf } from "./when.ts";

const DAY = Temporal.PlainDate;

/**
 * Whether a date lies in a period. A vague date that sticks out of it counts where its middle lies, so that no work is
 * counted in two neighbouring periods.
 */
export const isDuring = (date: Edtf | null, period: Period | null, hemisphere: Hemisphere): boolean => {
  if (period === null) return true;
  const span = spanOf(date, hemisphere);
  if (span === undefined) return false;
  const middle = span.from.add({ days: Math.floor((spanDays(span) - 1) / 2) });
  const started = period.from === null || DAY.compare(DAY.from(period.from), middle) <= 0;
  return started && (period.to === null || DAY.compare(middle, DAY.from(period.to)) < 0);
};

/** The bounds for looking records up. */
export const boundsOf = (period: Period | null): { readonly from?: string; readonly to?: string } => ({
  ...(period?.from == null ? {} : { from: period.from }),
  ...(period?.to == null ? {} : { to: period.to }),
});
