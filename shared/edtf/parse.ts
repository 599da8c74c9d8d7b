import type {
  EdtfDate,
  EdtfEnd,
  EdtfRange,
  EdtfSet,
  EdtfValue,
  ParsedEdtf,
  Part,
  Qualifier,
} from "./model.ts";

const DATE =
  /^([?~%])?(-?[\dX]{4}|Y-?\d+(?:E\d+)?)(?:S(\d+))?([?~%])?(?:-([?~%])?([\dX]{2})([?~%])?(?:-([?~%])?([\dX]{2})([?~%])?)?)?(?:T(\d\d:\d\d:\d\d(?:Z|[+-]\d\d(?::\d\d)?)?))?$/u;

const LAST_PART_OF_YEAR = 41;
const FIRST_SEASON = 21;

/** Why a text is refused; never leaves this file. */
class Refusal extends Error {
  readonly reason: (ParsedEdtf & { ok: false })["reason"];
  constructor(reason: (ParsedEdtf & { ok: false })["reason"]) {
    super(reason);
    this.reason = reason;
  }
}

const qualifierOf = (text: string | undefined): Qualifier | undefined =>
  text === "?" || text === "~" || text === "%" ? text : undefined;

const qualified = (part: Part, qualifier: Qualifier | undefined): Part =>
  qualifier === undefined ? part : { ...part, qualifier };

const yearValue = (text: string): number => {
  const [mantissa = "", exponent = "0"] = text.replace("Y", "").split("E");
  return Number(mantissa) * 10 ** Number(exponent);
};

const yearPart = (text: string): Part => {
  const [a, b] = [yearValue(text.replaceAll("X", "0")), yearValue(text.replaceAll("X", "9"))];
  return { text, low: Math.min(a, b), high: Math.max(a, b) };
};

const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
const DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Days of the longest month that the parts allow. */
const longestMonth = (year: Part, month: Part): number => {
  const lengths = DAYS.slice(month.low - 1, month.high);
  const leapless = year.low === year.high && !isLeap(year.low);
  return Math.max(...lengths.map((days) => (days === 29 && leapless ? 28 : days)));
};

const boundedPart = (text: string, least: number, most: number, reason: Refusal["reason"]): Part => {
  const low = Math.max(Number(text.replaceAll("X", "0")), text.includes("X") ? least : 0);
  const high = Math.min(Number(text.replaceAll("X", "9")), text.includes("X") ? most : 99);
  if (low < least || high > most || low > high) throw new Refusal(reason);
  return { text, low, high };
};

const monthPart = (text: string): Part => {
  const season = /^\d\d$/u.test(text) && Number(text) >= FIRST_SEASON;
  return season
    ? boundedPart(text, FIRST_SEASON, LAST_PART_OF_YEAR, "no such part of a year")
    : boundedPart(text, 1, 12, "no such part of a year");
};

const dayPart = (text: string, year: Part, month: Part): Part => {
  if (month.low >= FIRST_SEASON) throw new Refusal("no such day");
  return boundedPart(text, 1, longestMonth(year, month), "no such day");
};

/** A mark behind a part holds for it and all before it, one in front of it for it alone. */
const dateOf = (text: string): EdtfDate => {
  const match = DATE.exec(text);
  if (match === null) throw new Refusal("not EDTF");
  const [
    ,
    yearMark,
    year,
    significant,
    afterYear,
    monthMark,
    month,
    afterMonth,
    dayMark,
    day,
    afterDay,
    time,
  ] = match;
  const [all, both] = [qualifierOf(afterDay), qualifierOf(afterMonth)];
  const plainYear = yearPart(year ?? "");
  const plainMonth = month === undefined ? undefined : monthPart(month);
  const plainDay =
    day === undefined || plainMonth === undefined ? undefined : dayPart(day, plainYear, plainMonth);
  return {
    kind: "date",
    year: qualified(plainYear, qualifierOf(yearMark) ?? qualifierOf(afterYear) ?? both ?? all),
    ...(significant === undefined ? {} : { significant: Number(significant) }),
    ...(plainMonth === undefined
      ? {}
      : { month: qualified(plainMonth, qualifierOf(monthMark) ?? both ?? all) }),
    ...(plainDay === undefined ? {} : { day: qualified(plainDay, qualifierOf(dayMark) ?? all) }),
    ...(time === undefined ? {} : { time }),
  };
};

const endOf = (text: string): EdtfEnd => {
  if (text === "..") return { kind: "open" };
  return text === "" ? { kind: "unknown" } : dateOf(text);
};

const intervalOf = (text: string): EdtfValue => {
  const ends = text.split("/");
  if (ends.length === 1) return dateOf(text);
  const [start = "", end = ""] = ends;
  if (ends.length > 2 || (start.length < 3 && end.length < 3)) throw new Refusal("not EDTF");
  return { kind: "interval", start: endOf(start), end: endOf(end) };
};

const memberOf = (text: string): EdtfDate | EdtfRange => {
  const ends = text.split("..");
  if (ends.length === 1) return dateOf(text);
  if (ends.length > 2) throw new Refusal("not EDTF");
  const [start, end] = ends.map((end) => (end === "" ? ({ kind: "open" } as const) : dateOf(end)));
  if (start === undefined || end === undefined || (start.kind === "open" && end.kind === "open"))
    throw new Refusal("not EDTF");
  return { kind: "range", start, end };
};

const setOf = (text: string): EdtfSet => ({
  kind: "set",
  all: text.startsWith("{"),
  members: text
    .slice(1, -1)
    .split(",")
    .map((member) => memberOf(member.trim())),
});

const readValue = (text: string): EdtfValue =>
  /^(?:\[.*\]|\{.*\})$/u.test(text) ? setOf(text) : intervalOf(text);

/**
 * Reads EDTF, levels 0 to 2 (Library of Congress, 4 February 2019).
 * A text that is none, or that names a day or part of the year that does not exist, is refused with the reason.
 */
export const parseEdtf = (text: string): ParsedEdtf => {
  try {
    return { ok: true, value: readValue(text) };
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, reason: error.reason, text };
    throw error;
  }
};
