import { daySpan } from "../shared/edtf.ts";
import type { Hemisphere } from "../shared/reading.ts";
import type { Edtf } from "../shared/record.ts";

/** ISO days, `to` not included; both null when there is no date that can be bounded. */
export type DayBounds = { readonly from: string | null; readonly to: string | null };

export const dayBounds = (date: Edtf | null, hemisphere: Hemisphere): DayBounds => {
  const span = date === null ? undefined : daySpan(date, hemisphere);
  return { from: span?.from.toString() ?? null, to: span?.to.toString() ?? null };
};
