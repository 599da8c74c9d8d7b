import { Temporal } from "temporal-polyfill";
import type { DaySpan } from "../edtf.ts";
import type { Hemisphere } from "../reading.ts";
import type { Edtf } from "../record.ts";
import type { DateChange } from "./correction.ts";
import { spanDays, spanOf } from "./when.ts";

const YEAR = 12;
const SEASON = /^\d{4}-2[1-4]/;

type Shift = { readonly days: number } | { readonly months: number };

const shifted = (date: Edtf, by: Shift, hemisphere: Hemisphere): Edtf | null => {
  const span = spanOf(date, hemisphere);
  if (span === undefined) return null;
  const moved = span.from.add(by);
  if (SEASON.test(date) && "months" in by && by.months % YEAR === 0)
    return `${String(Number(date.slice(0, 4)) + by.months / YEAR)}${date.slice(4)}`;
  if (/^\d{4}[~?]?$/.test(date)) return moved.toPlainYearMonth().toString().slice(0, 4);
  return spanDays(span) === 1 ? moved.toString() : moved.toPlainYearMonth().toString();
};

const weekdayBeside = (
  from: Temporal.PlainDate,
  weekday: number,
  side: "before" | "after",
): Temporal.PlainDate => {
  const step = side === "before" ? -1 : 1;
  const days = Array.from({ length: 7 }, (_, at) => from.add({ days: step * (at + 1) }));
  return days.find((day) => day.dayOfWeek === weekday) ?? from;
};

const seasonBeside = (
  { from, to }: DaySpan,
  season: number,
  side: "before" | "after",
  hemisphere: Hemisphere,
): Edtf | null => {
  const years = [-2, -1, 0, 1, 2].map((by) => `${String(from.year + by)}-${String(season)}`);
  const fits = years.filter((edtf) => {
    const span = spanOf(edtf, hemisphere);
    if (span === undefined) return false;
    return side === "before"
      ? Temporal.PlainDate.compare(span.to, from) <= 0
      : Temporal.PlainDate.compare(span.from, to) >= 0;
  });
  return (side === "before" ? fits.at(-1) : fits[0]) ?? null;
};

/** The new date; counted ones from the date that the record has, or null when it has none. */
export const changedDate = (change: DateChange, kept: Edtf | null, hemisphere: Hemisphere): Edtf | null => {
  if ("on" in change) return change.on;
  if (kept === null) return null;
  if ("shift" in change) return shifted(kept, change.shift, hemisphere);
  const span = spanOf(kept, hemisphere);
  if (span !== undefined && "dayOfMonth" in change)
    return span.from.with({ day: change.dayOfMonth }).toString();
  if (span === undefined) return null;
  if ("season" in change) return seasonBeside(span, change.season, change.side, hemisphere);
  return "weekday" in change ? weekdayBeside(span.from, change.weekday, change.side).toString() : null;
};

/** Work can't have been done on a day to come. */
export const isToCome = (date: Edtf, today: Temporal.PlainDate, hemisphere: Hemisphere): boolean => {
  const span = spanOf(date, hemisphere);
  return span !== undefined && Temporal.PlainDate.compare(span.from, today) > 0;
};
