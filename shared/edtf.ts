import { Temporal } from "temporal-polyfill";
import type { Hemisphere } from "./reading.ts";
import type { Edtf } from "./record.ts";

/** Civil days, `from` included, `to` not. */
export type DaySpan = { readonly from: Temporal.PlainDate; readonly to: Temporal.PlainDate };

const SEASON_START_MONTH: Record<number, number> = { 21: 3, 22: 6, 23: 9, 24: 12 };

const point = (edtf: string, hemisphere: Hemisphere): DaySpan | undefined => {
  const match = /^(\d{4})(?:-(\d{2}))?(?:-(\d{2}))?$/.exec(edtf);
  if (match?.[1] === undefined) return undefined;
  const year = Number(match[1]);
  const monthOrSeason = match[2] === undefined ? undefined : Number(match[2]);
  if (monthOrSeason === undefined) return lasting(new Temporal.PlainDate(year, 1, 1), { years: 1 });
  const seasonStart = SEASON_START_MONTH[monthOrSeason];
  if (seasonStart !== undefined) {
    const month = hemisphere === "south" ? ((seasonStart + 5) % 12) + 1 : seasonStart;
    return lasting(new Temporal.PlainDate(year, month, 1), { months: 3 });
  }
  if (monthOrSeason > 12 || monthOrSeason < 1) return undefined;
  if (match[3] === undefined) return lasting(new Temporal.PlainDate(year, monthOrSeason, 1), { months: 1 });
  try {
    const day = Temporal.PlainDate.from(edtf, { overflow: "reject" });
    return lasting(day, { days: 1 });
  } catch {
    return undefined;
  }
};

const lasting = (from: Temporal.PlainDate, duration: Temporal.DurationLike): DaySpan => ({
  from,
  to: from.add(duration),
});

/**
 * The civil days that an EDTF date or interval covers; qualifiers (~ ? %) do not widen it.
 * Seasons are meteorological, named by the year in which they start; southern ones are shifted by six months.
 * Undefined when it is not a date we can bound.
 */
export const daySpan = (edtf: Edtf, hemisphere: Hemisphere): DaySpan | undefined => {
  const plain = edtf.replace(/[~?%]/g, "");
  const [first, last] = plain.split("/");
  const start = point(first ?? "", hemisphere);
  if (last === undefined) return start;
  const end = point(last, hemisphere);
  return start && end ? { from: start.from, to: end.to } : undefined;
};
