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

/** What was told to have passed until it gave out; what it had gone through at an earlier look says less. */
const untilFailure = ({ fields, verdicts }: KeptRecord): readonly Exposure[] =>
  verdicts.length === 0
    ? fields.exposure
    : (verdicts.find((verdict) => verdict.outcome === "failed")?.exposure ?? []);

/** What a life is measured against. */
export type Beside = {
  readonly history: History;
  readonly hemisphere: Hemisphere;
  /** The next work of its kind on the same thing and place. */
  readonly next: KeptRecord | undefined;
  readonly today: Temporal.PlainDate;
};

type Ends = { readonly day: Temporal.PlainDate | undefined; readonly seen: boolean };

/** The day on which it gave out or was last seen good; else the day of the next such work, or today. */
const endOf = (record: KeptRecord, { history, hemisphere, next, today }: Beside): Ends => {
  const failed = record.verdicts.find((verdict) => verdict.outcome === "failed");
  const closing = record.closedBy === null ? undefined : history.record(record.closedBy);
  const over = middleOf((closing ?? next)?.fields.date ?? null, hemisphere);
  const good = middleOf(lastGood(record.verdicts)?.when ?? null, hemisphere);
  if (failed !== undefined || record.fields.outcome === "failed") {
    const ends = [middleOf(failed?.when ?? null, hemisphere), over].filter((end) => end !== undefined);
    return { day: ends.sort((a, b) => Temporal.PlainDate.compare(a, b))[0], seen: true };
  }
  if (over !== undefined) return { day: over, seen: true };
  return good === undefined ? { day: today, seen: false } : { day: good, seen: true };
};

/**
 * How long a piece of work has held: to its failure, to the next such work, or to the last good look. Where nobody has
 * said how it does, the time without a word of trouble. Null where nothing bounds it.
 */
export const lifeOf = (record: KeptRecord, beside: Beside): Life => {
  const { hemisphere, next } = beside;
  const start = middleOf(record.fields.date, hemisphere);
  const { day, seen } = endOf(record, beside);
  const spoken = spokenDays(record.fields.exposure);
  const counted = start === undefined || day === undefined ? null : Math.max(0, start.until(day).days);
  const failed = record.fields.outcome === "failed";
  const told = failed ? spokenDays(untilFailure(record)) : null;
  const days = told ?? (counted === null ? spoken : Math.max(counted, spoken ?? 0));
  return {
    record,
    lived: { days, exposure: record.fields.exposure, seen: seen || spoken !== null },
    held: !failed && record.closedBy === null && next === undefined,
  };
};
