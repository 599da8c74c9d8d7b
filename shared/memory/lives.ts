import { Temporal } from "temporal-polyfill";
import type { History, KeptRecord, Verdict } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { Edtf, Exposure } from "../record.ts";
import type { Life } from "./answer-data.ts";
import { spanDays, spanOf } from "./when.ts";

/** Days in a spoken stretch of time; months and years by their mean length. */
const DAYS_IN: Partial<Record<Exposure["unit"], number>> = {
  days: 1,
  nights: 1,
  weeks: 7,
  months: 30.44,
  years: 365.25,
  seasons: 91.3,
};

const middleOf = (date: Edtf | null, hemisphere: Hemisphere): Temporal.PlainDate | undefined => {
  const span = spanOf(date, hemisphere);
  return span?.from.add({ days: Math.floor((spanDays(span) - 1) / 2) });
};

const spokenDays = (exposure: readonly Exposure[]): number | null => {
  const days = exposure.flatMap(({ count, unit }) => {
    const each = DAYS_IN[unit];
    return each === undefined ? [] : [count * each];
  });
  return days.length === 0 ? null : Math.round(Math.max(...days));
};

const lastGood = (verdicts: readonly Verdict[]): Verdict | undefined =>
  verdicts.findLast((verdict) => verdict.outcome !== "failed");

/** The day on which it gave out, or was last seen good. A successor's day bounds it. */
const endOf = (record: KeptRecord, next: KeptRecord | undefined, hemisphere: Hemisphere) => {
  const failed = record.verdicts.find((verdict) => verdict.outcome === "failed");
  const told = failed ?? lastGood(record.verdicts);
  const ends = [
    middleOf(told?.when ?? null, hemisphere),
    failed === undefined && record.fields.outcome !== "failed"
      ? undefined
      : middleOf(next?.fields.date ?? null, hemisphere),
  ];
  return ends.filter((end) => end !== undefined).sort((a, b) => Temporal.PlainDate.compare(a, b))[0];
};

/** How long a piece of work has held: to its failure, or to the last good look. Null where nothing bounds it. */
export const lifeOf = (record: KeptRecord, history: History, hemisphere: Hemisphere): Life => {
  const next = record.closedBy === null ? undefined : history.record(record.closedBy);
  const start = middleOf(record.fields.date, hemisphere);
  const end = endOf(record, next, hemisphere);
  const spoken = spokenDays(record.fields.exposure);
  const counted = start === undefined || end === undefined ? null : Math.max(0, start.until(end).days);
  const failed = record.fields.outcome === "failed";
  const days =
    failed && spoken !== null ? spoken : counted === null ? spoken : Math.max(counted, spoken ?? 0);
  return {
    record,
    lived: { days, exposure: record.fields.exposure },
    held: !failed && record.closedBy === null,
  };
};
