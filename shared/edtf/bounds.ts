import { Temporal } from "temporal-polyfill";
import type { Hemisphere } from "../reading.ts";
import type { EdtfDate, EdtfEnd, EdtfRange, EdtfValue } from "./model.ts";

type Day = Temporal.PlainDate;

/** Civil days, `from` included, `to` not; a side that is open or unknown is left out. */
export type Bounds = { readonly from?: Day; readonly to?: Day };

type Stretch = { readonly month: number; readonly months: number };
type Shift = (start: number) => number;
const halfYearOn: Shift = (start) => ((start + 5) % 12) + 1;
const SEASON_STARTS = [3, 6, 9, 12] as const;

/** Months of the parts of a year, 21 to 41: seasons, quarters, thirds and halves. */
const partOfYear = (code: number, hemisphere: Hemisphere): Stretch => {
  if (code >= 40) return { month: code === 40 ? 1 : 7, months: 6 };
  if (code >= 37) return { month: (code - 37) * 4 + 1, months: 4 };
  if (code >= 33) return { month: (code - 33) * 3 + 1, months: 3 };
  const south = code >= 29 || (code <= 24 && hemisphere === "south");
  const start = SEASON_STARTS[(code - 21) % 4] ?? 3;
  return { month: south ? halfYearOn(start) : start, months: 3 };
};

/** Temporal's own limits lie beyond; what is farther off has no bounds here. */
const FARTHEST_YEAR = 270_000;
const dayIn = (year: number, month: number, day: number): Day | undefined =>
  Math.abs(year) > FARTHEST_YEAR
    ? undefined
    : Temporal.PlainDate.from({ year, month, day }, { overflow: "constrain" });

/** The years that a year written with significant digits may be. */
const yearsOf = ({ year, significant }: EdtfDate): { readonly low: number; readonly high: number } => {
  if (significant === undefined) return year;
  const digits = String(Math.abs(year.low)).length;
  const unit = 10 ** Math.max(0, digits - significant);
  const low = Math.floor(year.low / unit) * unit;
  return { low, high: low + unit - 1 };
};

const between = (from: Day | undefined, to: Day | undefined): Bounds => ({
  ...(from === undefined ? {} : { from }),
  ...(to === undefined ? {} : { to }),
});

const dateBounds = (date: EdtfDate, hemisphere: Hemisphere): Bounds | undefined => {
  const { low, high } = yearsOf(date);
  const { month, day } = date;
  const first = month === undefined ? { month: 1, months: 12 } : monthsOf(month.low, hemisphere);
  const last = month === undefined ? first : monthsOf(month.high, hemisphere);
  const from = dayIn(low, first.month, day?.low ?? 1);
  const end = dayIn(high, last.month, day?.high ?? 1);
  if (from === undefined || end === undefined) return undefined;
  return { from, to: day === undefined ? end.add({ months: last.months }) : end.add({ days: 1 }) };
};
const monthsOf = (month: number, hemisphere: Hemisphere): Stretch =>
  month > 12 ? partOfYear(month, hemisphere) : { month, months: 1 };

const endBounds = (end: EdtfEnd, hemisphere: Hemisphere): Bounds | undefined =>
  end.kind === "date" ? dateBounds(end, hemisphere) : {};

const joined = (
  { start, end }: { start: EdtfEnd; end: EdtfEnd },
  hemisphere: Hemisphere,
): Bounds | undefined => {
  const [first, last] = [endBounds(start, hemisphere), endBounds(end, hemisphere)];
  return first && last && between(first.from, last.to);
};

const memberBounds = (member: EdtfDate | EdtfRange, hemisphere: Hemisphere): Bounds | undefined =>
  member.kind === "date" ? dateBounds(member, hemisphere) : joined(member, hemisphere);

const outermost = (all: readonly (Day | undefined)[], sign: 1 | -1): Day | undefined => {
  if (all.some((day) => day === undefined)) return undefined;
  return all.toSorted((a, b) => sign * (a && b ? Temporal.PlainDate.compare(a, b) : 0))[0];
};

/**
 * The civil days that a value covers, from the first that it may mean to the last; ~ ? % do not widen it.
 * Seasons are meteorological, named by the year in which they start; 21 to 24 follow the hemisphere.
 * Undefined when it lies farther off than the calendar reaches.
 */
export const boundsOf = (value: EdtfValue, hemisphere: Hemisphere): Bounds | undefined => {
  if (value.kind === "date") return dateBounds(value, hemisphere);
  if (value.kind === "interval") return joined(value, hemisphere);
  const all = value.members.map((member) => memberBounds(member, hemisphere));
  if (all.some((one) => one === undefined)) return undefined;
  return between(
    outermost(
      all.map((one) => one?.from),
      1,
    ),
    outermost(
      all.map((one) => one?.to),
      -1,
    ),
  );
};
