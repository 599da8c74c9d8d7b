import { Temporal } from "temporal-polyfill";
import type { Hemisphere } from "../reading.ts";
import type { EdtfDate, EdtfEnd, EdtfInterval, Qualifier } from "./model.ts";
import { parseEdtf } from "./parse.ts";

type Day = Temporal.PlainDate;
/** The hemisphere is only needed to tell which season runs over new year. */
type Here = { readonly today: Day; readonly hemisphere: Hemisphere | undefined };
const MONTHS = "January February March April May June July August September October November December".split(
  " ",
);
const SEASONS: Readonly<Record<number, string>> = { 21: "spring", 22: "summer", 23: "autumn", 24: "winter" };
const monthName = (month: number): string => MONTHS[month - 1] ?? "";
const shortMonth = (month: number): string => monthName(month).slice(0, 3);
const WEEKDAYS = "Mon Tue Wed Thu Fri Sat Sun".split(" ");

const HEDGES: Readonly<Record<Qualifier, string>> = { "~": "about ", "?": "perhaps ", "%": "perhaps about " };
const NEAR_DAYS = new Map([
  [0, "today"],
  [-1, "yesterday"],
  [1, "tomorrow"],
]);

const isPlain = ({ year, month, day, time, significant }: EdtfDate): boolean =>
  time === undefined &&
  significant === undefined &&
  [year, month, day].every((part) => part === undefined || part.low === part.high) &&
  (month === undefined || month.low <= 24);

const dayOf = ({ year, month, day }: EdtfDate): Day | undefined =>
  month === undefined || day === undefined ? undefined : new Temporal.PlainDate(year.low, month.low, day.low);

/** "Tue 3 Sep" within this year and the months around it, else "3 Sep 2024". */
const sayDay = (day: Day, today: Day): string => {
  const short = `${day.day} ${shortMonth(day.month)}`;
  const near = Math.abs(day.since(today).days) <= 180;
  return near ? `${WEEKDAYS[day.dayOfWeek - 1] ?? ""} ${short}` : `${short} ${day.year}`;
};

const sayBare = (date: EdtfDate, { today, hemisphere }: Here, close: boolean): string => {
  const day = dayOf(date);
  if (day !== undefined) return (close && NEAR_DAYS.get(day.since(today).days)) || sayDay(day, today);
  const { low: year } = date.year;
  if (date.month === undefined) return String(year);
  const season = SEASONS[date.month.low];
  if (season === undefined) return `${monthName(date.month.low)} ${year}`;
  const straddles = hemisphere !== undefined && season === (hemisphere === "north" ? "winter" : "summer");
  return straddles ? `${season} ${year}/${String((year + 1) % 100).padStart(2, "0")}` : `${season} ${year}`;
};

const hedgeOf = ({ year, month, day }: EdtfDate): string => {
  const qualifier = day?.qualifier ?? month?.qualifier ?? year.qualifier;
  return qualifier === undefined ? "" : HEDGES[qualifier];
};

const saySingle = (date: EdtfDate, here: Here, close = true): string => {
  const hedge = hedgeOf(date);
  return `${hedge}${sayBare(date, here, close && hedge === "")}`;
};

const sayEnd = (end: EdtfEnd, here: Here): string | undefined =>
  end.kind === "date" ? saySingle(end, here) : undefined;

/** "June or July 2024", "3 or 4 Aug", "the week of 16 Nov". */
const sayNeighbours = (start: EdtfDate, end: EdtfDate, today: Day): string | undefined => {
  const [first, last] = [dayOf(start), dayOf(end)];
  if (first !== undefined && last !== undefined) return sayDays(first, last, today);
  if (first !== undefined || last !== undefined || start.month === undefined || end.month === undefined)
    return undefined;
  const next =
    start.year.low === end.year.low && end.month.low === start.month.low + 1 && end.month.low <= 12;
  return next
    ? `${hedgeOf(start)}${monthName(start.month.low)} or ${monthName(end.month.low)} ${end.year.low}`
    : undefined;
};

const sayDays = (first: Day, last: Day, today: Day): string | undefined => {
  const days = last.since(first).days + 1;
  const dated = (day: Day) => sayDay(day, today).replace(/^\p{L}+ /u, "");
  if (days === 7 && first.dayOfWeek === 1) return `the week of ${dated(first)}`;
  if (days === 2 && first.dayOfWeek === 6) return `the weekend of ${dated(first)}`;
  return days === 2 ? `${sayDay(first, today)} or ${sayDay(last, today)}` : undefined;
};

const sayInterval = ({ start, end }: EdtfInterval, here: Here): string => {
  const [from, to] = [sayEnd(start, here), sayEnd(end, here)];
  if (from === undefined) return `until ${to ?? ""}`;
  if (to === undefined) return `since ${from}`;
  const both =
    start.kind === "date" && end.kind === "date" ? sayNeighbours(start, end, here.today) : undefined;
  return both ?? `between ${from} and ${to}`;
};

const canSay = (end: EdtfEnd): boolean => end.kind !== "date" || isPlain(end);

/**
 * A date in the words of a reply: "today", "Tue 3 Sep", "about September 2025", "summer 2025",
 * "between 2024 and 2025". With the hemisphere, a season over new year is "winter 2025/26".
 * What has no such words is given as written.
 */
export const sayDate = (edtf: string, today: Temporal.PlainDate, hemisphere?: Hemisphere): string => {
  const here = { today, hemisphere };
  const parsed = parseEdtf(edtf);
  if (!parsed.ok) return edtf;
  const { value } = parsed;
  if (value.kind === "date") return isPlain(value) ? saySingle(value, here) : edtf;
  if (value.kind === "interval")
    return canSay(value.start) && canSay(value.end) ? sayInterval(value, here) : edtf;
  return edtf;
};
