import { Temporal } from "temporal-polyfill";
import { type DaySpan, daySpan } from "../../shared/edtf.ts";
import type { Period } from "../../shared/memory/query.ts";
import type { Moment } from "../../shared/reading.ts";
import { findTimes, type Prefer, type TimeMention } from "../time/index.ts";

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

const YEAR =
  /(?<![$£€\d.,-]\s?)\b(?:19[89]|20[0-4])\d\b(?! ?(?:miles?|kms?|bucks|dollars|quid|euros?|pounds))/g;

/** "What has 2025 cost me": in a question, a year needs no preposition. */
const bareYears = (text: string, mentions: readonly TimeMention[]): TimeMention[] =>
  [...text.matchAll(YEAR)].flatMap((match): TimeMention[] => {
    const span = { start: match.index, end: match.index + match[0].length };
    const known = mentions.some((each) => each.span.start < span.end && span.start < each.span.end);
    return known
      ? []
      : [{ span, edtf: match[0], role: "point", direction: "past", sure: 0.8, rule: "bare-year" }];
  });

/** "Spring jobs": a season, where work stands behind it. */
const SEASON_WORK =
  /\b(spring|summer|autumn|fall|winter)(?= (?:jobs?|work|repairs?|fixes|chores|maintenance|projects?)\b)/gi;

const seasonsOfWork = (text: string, moment: Moment, mentions: readonly TimeMention[]): TimeMention[] =>
  [...text.matchAll(SEASON_WORK)].flatMap((match): TimeMention[] => {
    const span = { start: match.index, end: match.index + match[0].length };
    const known = mentions.some((each) => each.span.start < span.end && span.start < each.span.end);
    const [season] = known ? [] : findTimes(`in ${match[0]}`, moment, { prefer: "past" });
    return season === undefined ? [] : [{ ...season, span }];
  });

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

/** "All years", "over the years": no stretch of time at all. */
const EVER =
  /\b(?:(?:in|over|across|for|through(?:out)?|of) )?(?:all (?:the |these |those |of the )?years|(?:the|these) (?:\w+ )?years|all (?:the )?time|all seasons|every year|any year)\b(?! (?:ago|since|before|19\d\d|20\d\d))/gi;

/** "It feels like yesterday" tells no time. */
const FEELS_LIKE =
  /\b(?:feels?|felt|seems?|seemed|sounds?) like (?:it was )?(?:only |just )?(?:yesterday|last week|ages|years ago)\b/gi;
/** "Put her up for winter": what it was done for, and not when. */
const MADE_READY =
  /(?<=\b(?:put|puts|lay|laid|shut|closed?|drain(?:ed)?|blown?|blew|flush(?:ed)?|prep(?:ped)?|ready|cover(?:ed)?|stored?|up|down|out)\b[^,.?]{0,20})\bfor (?:the )?winter\b/gi;

const blank = (words: string): string => " ".repeat(words.length);

/** "Until now" bounds nothing; "for the spring" is a time like "in the spring". The length stays, for the spans. */
const plainer = (text: string): string =>
  text
    .replace(/\b(?:up )?(?:un)?(?:till?|to) (?:now|today|date|this day|the present)\b/gi, blank)
    .replace(/^(\s*(?:in )?(?:19|20)\d\d): /i, "$1, ")
    .replace(/\bo['’]? (?=(?:19|20)\d\d\b)/gi, blank)
    .replace(FEELS_LIKE, blank)
    .replace(MADE_READY, blank)
    .replace(EVER, blank)
    .replace(/\b(?:for|come) (?=(?:the )?(?:spring|summer|autumn|fall|winter)\b)/gi, (word) =>
      "in".padEnd(word.length),
    );

const HALF = /\b(?:the )?(first|1st|front|second|2nd|latter|last|other|back) half of\b/i;

/** "The first half of 2024" */
const halved = (text: string, bounds: Open): Open => {
  const half = HALF.exec(text)?.[1]?.toLowerCase();
  if (half === undefined || bounds.from === null || bounds.to === null) return bounds;
  const middle = bounds.from.add({ days: Math.round(bounds.from.until(bounds.to).days / 2) });
  const edge = bounds.from.until(bounds.to).days > 300 ? middle.with({ day: 1 }) : middle;
  return /^(?:first|1st|front)$/.test(half) ? { from: bounds.from, to: edge } : { from: edge, to: bounds.to };
};

/**
 * The stretch of time that a question asks about: from the first to the last of the times named. A year or a part of it
 * that is not over counts whole. What is still to be done lies ahead: `prefer` says where a bare season is looked for.
 */
export const periodIn = (asked: string, moment: Moment, prefer: Prefer = "past"): Timed => {
  const text = plainer(asked);
  const said = findTimes(text, moment, { prefer }).filter(({ sure }) => sure >= 0.5);
  const mentions = [...said, ...bareYears(text, said), ...seasonsOfWork(text, moment, said)].sort(
    (a, b) => a.span.start - b.span.start,
  );
  const bounds = mentions
    .flatMap((mention) => boundsOf(text, mention, moment) ?? [])
    .map((bound) => halved(text, bound));
  const rest = withoutTimes(text, mentions);
  if (bounds.length === 0) return { period: null, rest };
  const phrases = mentions.map(({ span }) => asked.slice(span.start, span.end)).join(" ");
  const from = first(
    bounds.map((bound) => bound.from),
    1,
  );
  const to = first(
    bounds.map((bound) => bound.to),
    -1,
  );
  return { period: { from, to, said: phrases }, rest };
};
