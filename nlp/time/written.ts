import { Chrono, en, type ParsedComponents, type ParsedResult, type Parser } from "chrono-node";
import { Temporal } from "temporal-polyfill";
import { isAmong } from "./context.ts";
import type { Found, Written } from "./find.ts";
import { isMoney, isSize, isVerbMay } from "./not-dates.ts";
import { dayOf, monthOf, type Period, spanOf } from "./period.ts";
import type { Reference } from "./reference.ts";
import { isDayFirst } from "./region.ts";
import { dateOf, monthDayNear } from "./resolve.ts";
import type { Token } from "./tokens.ts";

/** "2024-08", "2024/8": chrono knows the year and month only with a day or a month's name. */
const yearAndMonth: Parser = {
  pattern: () => /(?<![\d/.-])((?:19|20)\d\d)[-/.](0[1-9]|1[0-2])(?![\d/-]|\.\d)/u,
  extract: (_context, match) => ({ year: Number(match[1]), month: Number(match[2]) }),
};

/** "11-2016". */
const monthAndYear: Parser = {
  pattern: () => /(?<![\d/.-])(0?[1-9]|1[0-2])-((?:19|20)\d\d)(?![\d/-]|\.\d)/u,
  extract: (_context, match) => ({ year: Number(match[2]), month: Number(match[1]) }),
};

const chronoFor = (dayFirst: boolean): Chrono => {
  const { parsers, refiners } = en.configuration.createConfiguration(true, dayFirst);
  return new Chrono({ parsers: [...parsers, yearAndMonth, monthAndYear], refiners });
};
const MONTH_FIRST = chronoFor(false);
const DAY_FIRST = chronoFor(true);

/** Of what chrono finds, the dates written out; what is relative is read by our own rules. */
const isWritten = (result: ParsedResult): boolean => !result.tags().has("result/relativeDate");

const certain = (parts: ParsedComponents, name: "year" | "month" | "day"): number | undefined =>
  parts.isCertain(name) ? (parts.get(name) ?? undefined) : undefined;

const periodOf = (parts: ParsedComponents, reference: Reference): Period | undefined => {
  const [year, month, day] = [certain(parts, "year"), certain(parts, "month"), certain(parts, "day")];
  if (month === undefined || (year !== undefined && (year < 1900 || year > 2100))) return undefined;
  if (year === undefined) return day === undefined ? undefined : monthDayNear(month, day, reference);
  if (day === undefined) return monthOf(new Temporal.PlainDate(year, month, 1));
  const date = dateOf(year, month, day);
  return date && dayOf(date);
};

const between = (start: Period, end: Period | undefined): Period =>
  end === undefined ? start : spanOf(start, end);

const placeOf = (
  tokens: readonly Token[],
  { index, text }: ParsedResult,
): { at: number; next: number } | undefined => {
  const at = tokens.findIndex(({ start }) => start >= index);
  const end = index + text.trimEnd().length;
  let next = at;
  while (next < tokens.length && (tokens[next]?.start ?? end) < end) next++;
  return at < 0 || next <= at ? undefined : { at, next };
};

const foundIn = (result: ParsedResult, tokens: readonly Token[], reference: Reference): Found | undefined => {
  const place = placeOf(tokens, result);
  const start = periodOf(result.start, reference);
  if (place === undefined || start === undefined) return undefined;
  const full = result.start.isCertain("year");
  if (isMoney(tokens, place) || (!full && (isSize(tokens, place) || isVerbMay(tokens, place))))
    return undefined;
  const end = result.end ? periodOf(result.end, reference) : undefined;
  const sure = full ? 0.98 : 0.9;
  return {
    ...place,
    rule: "written",
    order: -1,
    namesYear: full,
    meaning: { period: between(start, end), direction: "either", sure },
  };
};

/** "5.5.26": day first or month first as the place has it. */
const SHORT = /(?<![\d.,])(\d{1,2})\.(\d{1,2})\.(\d{2})(?!\d|[.,]\d)/gu;

const shortDates = (text: string, tokens: readonly Token[], { region }: Reference): Found[] =>
  [...text.matchAll(SHORT)].flatMap((match) => {
    const [first, second, year] = match.slice(1).map(Number);
    const [day, month] = isDayFirst(region) ? [first, second] : [second, first];
    const date =
      (month ?? 0) >= 1 && (month ?? 13) <= 12 ? dateOf(2000 + (year ?? 0), month ?? 1, day ?? 0) : undefined;
    const at = tokens.findIndex(({ start }) => start === match.index);
    if (at < 0 || date === undefined) return [];
    const meaning = { period: dayOf(date), direction: "either", sure: 0.9 } as const;
    return [{ at, next: at + 1, rule: "written", order: -1, namesYear: true, meaning }];
  });

const DOTTED = /(?<![\d.,])(\d{1,2})\.(\d{1,2})\.(?=[\s,;:)]|$)/gu;

/** "Fitted 12.10., dry since": day and month with two dots, after a word that leads to a date or before a comma. */
const dottedDates = (text: string, tokens: readonly Token[], reference: Reference): Found[] => {
  if (!isDayFirst(reference.region)) return [];
  return [...text.matchAll(DOTTED)].flatMap(([whole, day = "", month = ""], _at, all) => {
    const index = all[_at]?.index ?? 0;
    const at = tokens.findIndex(({ start }) => start === index);
    const before = tokens[at]?.gap === "stop" ? "" : (tokens[at - 1]?.word ?? "");
    const led = before === "" || isAmong("dating", before) || /[^e]ed$|d$/u.test(before);
    const period = Number(month) <= 12 ? monthDayNear(Number(month), Number(day), reference) : undefined;
    if (at < 0 || period === undefined || !(led || text[index + whole.length] === ",")) return [];
    const meaning = { period, direction: "either", sure: 0.85 } as const;
    return [{ at, next: at + 1, rule: "written", order: -1, namesYear: false, meaning }];
  });
};

/** The dates that are written out with digits, read by chrono, by the index of their first token. */
export const writtenDates = (text: string, tokens: readonly Token[], reference: Reference): Written => {
  if (!/\d/u.test(text)) return new Map();
  const chrono = isDayFirst(reference.region) ? DAY_FIRST : MONTH_FIRST;
  const results = chrono.parse(text, { instant: reference.instant, timezone: reference.offsetMinutes });
  const found = results.filter(isWritten).map((result) => foundIn(result, tokens, reference));
  const all = [
    ...found.filter((one) => one !== undefined),
    ...dottedDates(text, tokens, reference),
    ...shortDates(text, tokens, reference),
  ];
  return new Map(all.map((one) => [one.at, one]));
};
