import { Temporal } from "temporal-polyfill";
import { type DaySpan, daySpan } from "../../shared/edtf.ts";
import type { Period } from "../../shared/memory/query.ts";
import type { Moment } from "../../shared/reading.ts";
import { findTimes, type TimeMention } from "../time/index.ts";

export type Timed = {
  readonly period: Period | null;
  /** The text without its time phrases. */
  readonly rest: string;
};

const today = (moment: Moment): Temporal.PlainDate =>
  Temporal.Instant.from(moment.said).toZonedDateTimeISO(moment.zone).toPlainDate();

type Open = { readonly from: Temporal.PlainDate | null; readonly to: Temporal.PlainDate | null };

const sideOf = (text: string, mention: TimeMention): "since" | "until" | "after" | "in" => {
  const lead = text.slice(0, mention.span.end).toLowerCase();
  if (mention.role === "since" || /\bsince\b[^.]*$/.test(lead)) return "since";
  if (mention.role === "until" || /\b(?:before|until|till|up to)\b(?:\s+\S+){0,4}$/.test(lead))
    return "until";
  return /\bafter\b(?:\s+\S+){0,4}$/.test(lead) ? "after" : "in";
};

const opened = (span: DaySpan, side: ReturnType<typeof sideOf>): Open => {
  if (side === "since") return { from: span.from, to: null };
  if (side === "until") return { from: null, to: span.from };
  if (side === "after") return { from: span.to, to: null };
  return span;
};

/** "In the last year" of a question is the twelve months up to now, not the last calendar year. */
const RUNNING_YEAR = /\b(?:in|over|during|within|for) the (?:last|past) (?:year|12 months|twelve months)\b/i;

const boundsOf = (text: string, mention: TimeMention, moment: Moment): Open | undefined => {
  const span = daySpan(mention.edtf, moment.hemisphere);
  if (span === undefined) return undefined;
  const phrase = text.slice(Math.max(0, mention.span.start - 12), mention.span.end);
  const now = today(moment);
  if (RUNNING_YEAR.test(phrase)) return { from: now.subtract({ years: 1 }), to: now.add({ days: 1 }) };
  return opened(span, sideOf(text, mention));
};

const first = (days: readonly (Temporal.PlainDate | null)[], order: 1 | -1): string | null =>
  days.includes(null)
    ? null
    : (days
        .filter((day) => day !== null)
        .sort((a, b) => order * Temporal.PlainDate.compare(a, b))[0]
        ?.toString() ?? null);

const withoutTimes = (text: string, mentions: readonly TimeMention[]): string =>
  [...mentions]
    .reverse()
    .reduce((rest, { span }) => `${rest.slice(0, span.start)} , ${rest.slice(span.end)}`, text);

/**
 * The stretch of time that a question asks about: from the first to the last of the times named. A year or a part of it
 * that is not over counts whole.
 */
export const periodIn = (text: string, moment: Moment): Timed => {
  const mentions = findTimes(text, moment, { prefer: "past" }).filter(({ sure }) => sure >= 0.5);
  const bounds = mentions.flatMap((mention) => boundsOf(text, mention, moment) ?? []);
  const rest = withoutTimes(text, mentions);
  if (bounds.length === 0) return { period: null, rest };
  const said = mentions.map(({ span }) => text.slice(span.start, span.end)).join(" ");
  const from = first(
    bounds.map((bound) => bound.from),
    1,
  );
  const to = first(
    bounds.map((bound) => bound.to),
    -1,
  );
  return { period: { from, to, said }, rest };
};
