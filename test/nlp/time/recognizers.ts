import { existsSync, readFileSync } from "node:fs";
import * as chrono from "chrono-node";
import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import { findTimes } from "../../../nlp/time/index.ts";
import { daySpan } from "../../../shared/edtf.ts";

/**
 * English dates and date ranges of the test specifications of microsoft/Recognizers-Text (MIT licence),
 * with the value in the past reading. The data stay outside this project.
 */
const FILE = "../shared/checks/time/recognizers-en.jsonl";
export const HAS_RECOGNIZERS = existsSync(FILE);
const ZONE = "America/New_York";

const value = z.looseObject({
  date: z.string().optional(),
  startDate: z.string().optional(),
  endDate: z.string().optional(),
  value: z.string().optional(),
  start: z.string().optional(),
  end: z.string().optional(),
});
const row = z.looseObject({
  input: z.string(),
  refTime: z.string().nullable(),
  match: z.string(),
  type: z.string(),
  past: value.nullable(),
  values: z.array(value).optional(),
});

type Day = Temporal.PlainDate;
/** First day and last. */
type Stretch = { readonly from: Day; readonly last: Day };
/** What a reader found, and the first day of the later of two ends that were named. */
type Read = Stretch & { readonly secondFrom?: Day | undefined };
type Case = {
  readonly input: string;
  readonly said: Temporal.ZonedDateTime;
  readonly start: number;
  readonly end: number;
  readonly kind: "date" | "daterange";
  readonly want: Stretch;
};

const dayIn = (text: string | undefined): Day | undefined =>
  text !== undefined && /^\d{4}-\d\d-\d\d/u.test(text) && !text.startsWith("0001")
    ? Temporal.PlainDate.from(text.slice(0, 10))
    : undefined;

const wanted = (past: z.infer<typeof value> | undefined): Stretch | undefined => {
  const single = dayIn(past?.date ?? past?.value);
  if (single !== undefined) return { from: single, last: single };
  const [from, to] = [dayIn(past?.startDate ?? past?.start), dayIn(past?.endDate ?? past?.end)];
  return from && to && { from, last: to.subtract({ days: 1 }) };
};

const caseOf = (line: string): readonly Case[] => {
  const { input, refTime, match, type, past, values } = row.parse(JSON.parse(line));
  const start = input.toLowerCase().indexOf(match.toLowerCase());
  const want = wanted(past ?? values?.[0]);
  if ((type !== "date" && type !== "daterange") || refTime === null || start < 0 || want === undefined)
    return [];
  const said = Temporal.PlainDateTime.from(refTime.slice(0, 19)).toZonedDateTime(ZONE);
  return [{ input, said, start, end: start + match.length, kind: type, want }];
};

export const recognizerCases = (): readonly Case[] =>
  readFileSync(FILE, "utf8").trim().split("\n").flatMap(caseOf);

const overlapping = (one: Case, start: number, end: number): boolean => start < one.end && end > one.start;

const ours = (one: Case): Read | undefined => {
  const said = one.said.toInstant().toString();
  const found = findTimes(one.input, { said, zone: ZONE, hemisphere: "north" });
  const mention = found.find(({ span }) => overlapping(one, span.start, span.end));
  const days = mention && daySpan(mention.edtf, "north");
  const second = mention?.edtf.split("/")[1];
  const secondFrom = second === undefined ? undefined : daySpan(second, "north")?.from;
  return days && { from: days.from, last: days.to.subtract({ days: 1 }), secondFrom };
};

/** What chrono is certain of: a day, a month or a year. */
const chronoStretch = (parts: chrono.ParsedComponents): Stretch => {
  const [year, month, day] = (["year", "month", "day"] as const).map((name) => parts.get(name) ?? 1);
  const date = Temporal.PlainDate.from({ year: year ?? 1, month: month ?? 1, day: day ?? 1 });
  if (parts.isCertain("day") || parts.isCertain("weekday")) return { from: date, last: date };
  if (parts.isCertain("month"))
    return { from: date.with({ day: 1 }), last: date.with({ day: date.daysInMonth }) };
  return parts.isCertain("year")
    ? { from: date.with({ month: 1, day: 1 }), last: date.with({ month: 12, day: 31 }) }
    : { from: date, last: date };
};

const chronoAlone = (one: Case): Read | undefined => {
  const reference = {
    instant: new Date(one.said.epochMilliseconds),
    timezone: one.said.offsetNanoseconds / 6e10,
  };
  const found = chrono
    .parse(one.input, reference)
    .find(({ index, text }) => overlapping(one, index, index + text.length));
  if (found === undefined) return undefined;
  const start = chronoStretch(found.start);
  if (!found.end) return start;
  const end = chronoStretch(found.end);
  return { from: start.from, last: end.last, secondFrom: end.from };
};

/** "From March to May" ends there with the first of May; here that is right when May is the second end. */
const same = (got: Read, want: Stretch): boolean =>
  got.from.equals(want.from) &&
  (got.last.equals(want.last) || got.secondFrom?.equals(want.last.add({ days: 1 })) === true);
const length = ({ from, last }: Stretch): number => last.since(from).days + 1;
/** Theirs lies within ours, and ours is at most the month, or for long stretches the year, around it. */
const covers = (wide: Stretch, narrow: Stretch): boolean =>
  Temporal.PlainDate.compare(wide.from, narrow.from) <= 0 &&
  Temporal.PlainDate.compare(narrow.last, wide.last) <= 0 &&
  length(wide) <= (length(narrow) > 100 ? 366 : 31);

export type Figures = { readonly cases: number; readonly exact: number; readonly covered: number };
const share = (cases: readonly Case[], read: (one: Case) => Read | undefined): Figures => {
  const right = (test: (got: Read, want: Stretch) => boolean) =>
    cases.filter((one) => {
      const got = read(one);
      return got !== undefined && test(got, one.want);
    }).length / cases.length;
  return {
    cases: cases.length,
    exact: right(same),
    covered: right((got, want) => same(got, want) || covers(got, want)),
  };
};

/** Shares of the cases that are read as exactly the same days, and of those that at least cover them. */
export const recognizerFigures = (
  kind: Case["kind"],
): { readonly ours: Figures; readonly chrono: Figures } => {
  const cases = recognizerCases().filter((one) => one.kind === kind);
  return { ours: share(cases, ours), chrono: share(cases, chronoAlone) };
};
