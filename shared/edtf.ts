import type { Temporal } from "temporal-polyfill";
import { boundsOf } from "./edtf/bounds.ts";
import { parseEdtf } from "./edtf/parse.ts";
import type { Hemisphere } from "./reading.ts";
import type { Edtf } from "./record.ts";

export { type Bounds, boundsOf } from "./edtf/bounds.ts";
export type * from "./edtf/model.ts";
export { parseEdtf } from "./edtf/parse.ts";
export { sayDate } from "./edtf/say.ts";
export { writeEdtf } from "./edtf/write.ts";

/** Civil days, `from` included, `to` not. */
export type DaySpan = { readonly from: Temporal.PlainDate; readonly to: Temporal.PlainDate };

const spanned = (edtf: Edtf, hemisphere: Hemisphere): DaySpan | undefined => {
  const parsed = parseEdtf(edtf);
  const bounds = parsed.ok ? boundsOf(parsed.value, hemisphere) : undefined;
  return bounds?.from && bounds.to ? { from: bounds.from, to: bounds.to } : undefined;
};

/** A rig's records share few dates, and each is asked for many times: as many as are worked out only once. */
const MOST = 5000;
const known = new Map<string, DaySpan | undefined>();

/**
 * The civil days that an EDTF date or interval covers; qualifiers (~ ? %) do not widen it.
 * Seasons are meteorological, named by the year in which they start; southern ones are shifted by six months.
 * Undefined when it is not a date that is bounded on both sides.
 */
export const daySpan = (edtf: Edtf, hemisphere: Hemisphere): DaySpan | undefined => {
  const key = `${hemisphere} ${edtf}`;
  if (known.has(key)) return known.get(key);
  const span = spanned(edtf, hemisphere);
  if (known.size >= MOST) known.clear();
  known.set(key, span);
  return span;
};
