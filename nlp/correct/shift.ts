import type { DateChange } from "../../shared/memory/correction.ts";
import { SEASONS } from "../time/lexicon.ts";

const COUNTS: Readonly<Record<string, number>> = {
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  couple: 2,
};
const WEEKDAYS = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];
const UNIT_DAYS: Readonly<Record<string, number>> = { day: 1, weekend: 7, week: 7, fortnight: 14 };
const UNIT_MONTHS: Readonly<Record<string, number>> = { month: 1, year: 12 };

const COUNTED =
  /\b(?:(a|an|one|two|three|four|five|six|\d{1,2}|a couple(?: of)?) )?(day|weekend|week|fortnight|month|year)s? (earlier|before that|before then|before(?! yesterday)|prior|sooner|later|after that|after|(?:too )?(?:late|early))\b/;
const WEEKDAY = new RegExp(
  `\\b(?:the )?(${WEEKDAYS.join("|")}) (before|prior|earlier|after|later|following)\\b|\\b(?:the )?(previous|following|next) (${WEEKDAYS.join("|")})\\b`,
);

const countOf = (word: string | undefined): number => {
  if (word === undefined) return 1;
  const first = word.replace(/^a couple.*/, "couple");
  return COUNTS[first] ?? (Number(first) || 1);
};

/** What is a week late in the log was done a week before. */
const isBack = (word: string): boolean => /^(?:earlier|before|prior|sooner|previous)|late$/.test(word);

const weekdayShift = (words: string): DateChange | undefined => {
  const match = WEEKDAY.exec(words);
  if (match === null) return undefined;
  const weekday = WEEKDAYS.indexOf(match[1] ?? match[4] ?? "") + 1;
  return { weekday, side: isBack(match[2] ?? match[3] ?? "") ? "before" : "after" };
};

/** "The summer before that": before the one on record, or before what is on record. */
const SEASON =
  /\b(?:the|a) (spring|summer|autumn|fall|winter) (before|prior|earlier|after)\b(?: that\b| then\b| this\b)?(?! (?:last|the|we|i|it|he|she|they)\b)|\b(?:the )?(previous|following) (spring|summer|autumn|fall|winter)\b/;

const seasonShift = (words: string): DateChange | undefined => {
  const match = SEASON.exec(words);
  const season = SEASONS.get(match?.[1] ?? match?.[4] ?? "");
  return match === null || season === undefined
    ? undefined
    : { season, side: isBack(match[2] ?? match[3] ?? "") ? "before" : "after" };
};

const MONTHS = "jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec";
/** "The 12th" with no month beside it. */
const DAY_OF_MONTH = new RegExp(
  `(?<!(?:${MONTHS})[a-z]* )\\bthe (\\d{1,2})(?:st|nd|rd|th)\\b(?! (?:of|${MONTHS}))`,
);

const dayOfMonth = (words: string): DateChange | undefined => {
  const day = Number(DAY_OF_MONTH.exec(words)?.[1]);
  return day >= 1 && day <= 31 ? { dayOfMonth: day } : undefined;
};

/** A date counted from the one on record: "the Saturday before", "a week earlier". */
export const shiftIn = (words: string): DateChange | undefined => {
  const weekday = weekdayShift(words);
  if (weekday !== undefined) return weekday;
  const season = seasonShift(words);
  if (season !== undefined) return season;
  const match = COUNTED.exec(words);
  if (match === null) return dayOfMonth(words);
  const unit = match[2] ?? "day";
  const count = countOf(match[1]) * (isBack(match[3] ?? "") ? -1 : 1);
  const months = UNIT_MONTHS[unit];
  return {
    shift: months === undefined ? { days: count * (UNIT_DAYS[unit] ?? 1) } : { months: count * months },
  };
};
