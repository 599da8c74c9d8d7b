import { Temporal } from "temporal-polyfill";
import type { Hemisphere } from "../reading.ts";
import type { Edtf } from "../record.ts";
import type { DateChange } from "./correction.ts";
import { spanDays, spanOf } from "./when.ts";

const shifted = (date: Edtf, by: Temporal.DurationLike, hemisphere: Hemisphere): Edtf | null => {
  const span = spanOf(date, hemisphere);
  if (span === undefined) return null;
  const moved = span.from.add(by);
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

/** The new date; counted ones from the date that the record has, or null when it has none. */
export const changedDate = (change: DateChange, kept: Edtf | null, hemisphere: Hemisphere): Edtf | null => {
  if ("on" in change) return change.on;
  if (kept === null) return null;
  if ("shift" in change) return shifted(kept, change.shift, hemisphere);
  const span = spanOf(kept, hemisphere);
  if (span !== undefined && "dayOfMonth" in change)
    return span.from.with({ day: change.dayOfMonth }).toString();
  return span === undefined || !("weekday" in change)
    ? null
    : weekdayBeside(span.from, change.weekday, change.side).toString();
};

/** Work can't have been done on a day to come. */
export const isToCome = (date: Edtf, today: Temporal.PlainDate, hemisphere: Hemisphere): boolean => {
  const span = spanOf(date, hemisphere);
  return span !== undefined && Temporal.PlainDate.compare(span.from, today) > 0;
};
