import { Temporal } from "temporal-polyfill";
import { capital } from "../../shared/capital.ts";
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
  const { start, end } = mention.span;
  /** "March until May" is a stretch by itself. */
  const lead = text
    .slice(0, mention.edtf.includes("/") ? start : end)
    .toLowerCase()
    .trimEnd();
  if (mention.role === "since" || /\bsince\b[^.]*$/.test(lead)) return "since";
  if (mention.role === "until" || /\b(?:before(?! last$)|until|till|up to)\b(?:\s+\S+){0,4}$/.test(lead))
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
      : [
          {
            span,
            edtf: match[0],
            role: "point",
            direction: "past",
            namesYear: true,
            sure: 0.8,
            rule: "bare-year",
          },
        ];
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

/** "Since day one": whatever other time is named, all of it is meant. */
const FROM_THE_START =
  /\b(?:since|from) (?:day (?:one|1)|the (?:very )?(?:start|beginning|off|word go|get go)(?! of (?!time\b|it\b|things\b))|(?:i|we) (?:first )?(?:got|bought|had|owned) (?:her|it|him|the \w+|this \w+))\b/i;

/** Whether words name all the time there was. */
export const tellsEver = (text: string): boolean => text.search(EVER) >= 0 || FROM_THE_START.test(text);

/** "Not this year's": a time that is not meant. */
const NOT_THAT =
  /\bnot (?:in |for |of )?(?:this|last|next|the) (?:year|month|week|spring|summer|autumn|fall|winter)(?:['’]?s)?(?: one)?\b/gi;

const UNITS = ["", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
/** "Twenty-three" and "twenty twenty three" as a year; figures as they are. */
const yearOf = (said: string): string => {
  const unit = UNITS.indexOf(/(\w+)$/.exec(said.toLowerCase())?.[1] ?? "");
  return unit > 0 ? `202${String(unit)}` : said;
};
const A_YEAR = `((?:19|20)\\d\\d|(?:twenty )?twenty[ -](?:${UNITS.slice(1).join("|")}))\\b`;
/** "That summer in twenty twenty two", "the summer before this one, in 2023": a season of the year named behind it. */
const SEASON_OF_YEAR = new RegExp(
  `\\b(?:in |over |during )?(?:that|the|this) (?:very )?(?:first |last )?(spring|summer|autumn|fall|winter)(?: (?:before (?:this|last|that)(?: one)?|just gone|gone))?,? (?:of |in |back in )?${A_YEAR}`,
  "gi",
);
/** "In summer, 2022" */
const SEASON_THEN_YEAR = new RegExp(`\\b(spring|summer|autumn|fall|winter),(?= ${A_YEAR})`, "gi");
const inSeason = (phrase: string, season: string, year: string): string => {
  const short = `in ${season}`;
  return `${short.padEnd(phrase.length - yearOf(year).length)}${yearOf(year)}`;
};

/** "In the calendar year 2024" */
const CALENDAR_YEAR = new RegExp(
  `\\b(?:the )?(?:(?:calendar|whole|full|entire) )+year(?: of)? (?=${A_YEAR})`,
  "gi",
);

/** "In twenty four all told", "the year twenty four": a year, and no count of anything. */
const SHORT_YEAR = new RegExp(
  `\\b(in|during|(?:in )?the year|back in|all of|through|over) (?:twenty[ -](${UNITS.slice(1).join("|")}))\\b(?! (?:\\w+ )?(?:hours?|hrs?|minutes?|days?|nights?|weeks?|months?|years?|trips?|miles?|km|kms|volts?|amps?|bucks|dollars|quid|euros?|pounds|rand|percent|feet|foot|inch(?:es)?|gallons?|lit(?:er|re)s?|times)\\b)`,
  "gi",
);
const inShortYear = (phrase: string, _lead: string, unit: string): string => {
  const year = yearOf(unit);
  return `${"in".padEnd(phrase.length - year.length)}${year}`;
};

/** "It feels like yesterday" tells no time. */
const FEELS_LIKE =
  /\b(?:feels?|felt|seems?|seemed|sounds?) like (?:it was )?(?:only |just )?(?:yesterday|last week|ages|years ago)\b/gi;
/** "Put her up for winter": what it was done for, and not when. */
const MADE_READY =
  /(?<=\b(?:put|puts|lay|laid|shut|closed?|drain(?:ed)?|blown?|blew|flush(?:ed)?|prep(?:ped)?|ready|cover(?:ed)?|stored?|up|down|out)\b[^,.?]{0,20})\bfor (?:the )?winter\b/gi;

/** "In the spring last year, not this spring, the one before": says the same once more. */
const THE_ONE_BEFORE =
  /\bnot (?:this|last) (?:spring|summer|autumn|fall|winter|year|one|season|month)\b[\s,]*(?:but )?the (?:one|year) before\b(?: (?:that|it))?/gi;

const blank = (words: string): string => " ".repeat(words.length);

/** "Until now" bounds nothing; "for the spring" is a time like "in the spring". The length stays, for the spans. */
const plainer = (text: string): string =>
  text
    .replace(/\b(?:up )?(?:un)?(?:till?|to) (?:now|today|date|this day|the present)\b/gi, blank)
    .replace(/^(\s*(?:in )?(?:19|20)\d\d): /i, "$1, ")
    .replace(/\bo['’]? (?=(?:19|20)\d\d\b)/gi, blank)
    .replace(CALENDAR_YEAR, blank)
    .replace(SEASON_OF_YEAR, inSeason)
    .replace(SEASON_THEN_YEAR, "$1 ")
    .replace(SHORT_YEAR, inShortYear)
    .replace(THE_ONE_BEFORE, blank)
    .replace(NOT_THAT, blank)
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

const MOST_OF_A_YEAR = 300;

/** Whether a stretch of a year or more holds a shorter one. */
const contains = (wide: Open, narrow: Open): boolean =>
  wide.from !== null &&
  wide.to !== null &&
  narrow.from !== null &&
  narrow.to !== null &&
  wide.from.until(wide.to).days > MOST_OF_A_YEAR &&
  Temporal.PlainDate.compare(wide.from, narrow.from) <= 0 &&
  Temporal.PlainDate.compare(narrow.to, wide.to) <= 0 &&
  !(wide.from.equals(narrow.from) && wide.to.equals(narrow.to));

/** A time named, with its bounds. */
type Bound = Open & { readonly words: string };

/** "Back in 2022, my wife says I sat in a chair all year": all of the year that is named. */
const ALL_YEAR = /^all (?:the )?year(?: long| round)?$/i;

/** A year that one of its seasons is named beside says no more than that. */
const narrowest = (bounds: readonly Bound[]): readonly Bound[] => {
  const named = bounds.filter(({ words }) => !ALL_YEAR.test(words.trim()));
  const meant = named.length > 0 ? named : bounds;
  return meant.filter((wide) => !meant.some((narrow) => contains(wide, narrow)));
};

/** "I'm drawing up next year's calendar, what did I do last winter": what was done lies behind. */
const behind = (bounds: readonly Bound[], moment: Moment): readonly Bound[] => {
  const now = today(moment);
  const past = bounds.filter(({ from }) => from === null || Temporal.PlainDate.compare(from, now) <= 0);
  return past.length > 0 ? past : bounds;
};

const SPOKEN_YEAR = new RegExp(`\\b${A_YEAR}`, "gi");
/** How a time named begins that can stand behind anything as it is: "3 entries last summer". */
const LED =
  /^(?:in|on|at|over|during|since|last|this|the|these|those|all|between|from|before|after|until|through|back|around|about|within|for|yesterday|today|lately|recently|so|ever|as|to|up|by|over|past|a|an|two|three|four|five|six)\b/i;

const NAMES_OF_DAYS =
  /\b(?:january|february|march|april|may(?= (?:19|20)\d\d)|june|july|august|september|october|november|december|monday|tuesday|wednesday|thursday|friday|saturday|sunday)\b/g;

/** The times as they were named, each once, years in figures and names with a capital: "in the spring of 2025", "in June". */
const saidOf = (bounds: readonly Bound[]): string => {
  const words = bounds.map((bound) =>
    bound.words
      .trim()
      .replace(SPOKEN_YEAR, yearOf)
      .replace(NAMES_OF_DAYS, (name) => capital(name)),
  );
  const said = [...new Set(words)].join(" ");
  return LED.test(said) ? `${said.charAt(0).toLowerCase()}${said.slice(1)}` : `in ${said}`;
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
  const named = mentions.flatMap((mention): Bound[] => {
    const bound = boundsOf(text, mention, moment);
    const words = asked.slice(mention.span.start, mention.span.end);
    return bound === undefined ? [] : [{ ...halved(text, bound), words }];
  });
  const bounds = prefer === "past" ? behind(narrowest(named), moment) : narrowest(named);
  const rest = withoutTimes(text, mentions);
  if (bounds.length === 0 || FROM_THE_START.test(asked)) return { period: null, rest };
  const from = first(
    bounds.map((bound) => bound.from),
    1,
  );
  const to = first(
    bounds.map((bound) => bound.to),
    -1,
  );
  return { period: { from, to, said: saidOf(bounds) }, rest };
};
