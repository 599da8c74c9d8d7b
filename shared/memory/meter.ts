import { Temporal } from "temporal-polyfill";
import type { History, KeptUsage } from "../history.ts";
import type { Moment } from "../reading.ts";
import type { Usage } from "../record.ts";
import { dayOf, spanOf } from "./when.ts";

/** How far around a reading others are compared with it, in days: further off, a meter may have been changed. */
const AROUND = 800;

type Reading = Extract<Usage, { readonly reading: number }>;

const readingOf = ({ usage }: KeptUsage): number | undefined =>
  "reading" in usage ? usage.reading : undefined;

const startOf = (date: string | null, moment: Moment): Temporal.PlainDate =>
  spanOf(date, moment.hemisphere)?.from ?? dayOf(moment);

const saidDay = (entry: KeptUsage, moment: Moment): Temporal.PlainDate =>
  startOf(entry.usage.date, { ...moment, said: entry.saidAt });

const contradicts = (told: Reading, day: Temporal.PlainDate, entry: KeptUsage, moment: Moment): boolean => {
  const other = readingOf(entry);
  if (other === undefined || entry.usage.unit !== told.unit) return false;
  const order = Temporal.PlainDate.compare(saidDay(entry, moment), day);
  return (order < 0 && other > told.reading) || (order > 0 && other < told.reading);
};

/**
 * The kept reading that a meter reading just told can't be true beside: an earlier one that is higher, or a later one
 * that is lower; the nearest in value. Undefined when it runs forward, and for plain amounts.
 */
export const contradictedReading = (told: Usage, history: History, moment: Moment): KeptUsage | undefined => {
  if (!("reading" in told)) return undefined;
  const day = startOf(told.date, moment);
  const near = history.usage(day.subtract({ days: AROUND }).toString(), day.add({ days: AROUND }).toString());
  return near
    .filter((entry) => contradicts(told, day, entry, moment))
    .sort(
      (a, b) => Math.abs((readingOf(a) ?? 0) - told.reading) - Math.abs((readingOf(b) ?? 0) - told.reading),
    )[0];
};
