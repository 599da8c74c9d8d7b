import { Temporal } from "temporal-polyfill";
import { daySpan } from "../../shared/edtf.ts";
import type { Edtf } from "../../shared/record.ts";
import type { Build } from "./build.ts";
import type { TimeRef } from "./scan.ts";

/** What a month, day or season told without its year is, if its year is the one told before it. */
export type InYearTold = {
  readonly edtf: Edtf;
  /** "after": the first after what was told before; "short-year": "aug 21" for August 2021. */
  readonly as: "after" | "short-year";
  /** The year told last before it. */
  readonly year: TimeRef;
  /** What is told behind it: a later year, else a time of this year that needs none ("last week"), else neither. */
  readonly then: "later-year" | "now" | "nothing";
  /** How many have been taken so since that year. */
  readonly nth: number;
};

/** What comes once a year comes no sooner again. */
const YEARLY_DAYS = 300;

type Again = (day: Temporal.PlainDate, side: -1 | 1) => Edtf;

/** The first of what comes once a year that is not over by a day, and when it begins; undefined for what comes more often. */
const firstFrom = (again: Again, day: Temporal.PlainDate, build: Build) => {
  const { hemisphere } = build.scan.moment;
  const edtf = again(day, 1);
  const span = daySpan(edtf, hemisphere);
  if (span === undefined) return undefined;
  const next = daySpan(again(span.to, 1), hemisphere);
  return next !== undefined && next.from.since(span.from).days > YEARLY_DAYS
    ? { edtf, from: span.from }
    : undefined;
};

const MONTH_DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
/** "Aug 21", with nothing behind the number. */
const SHORT_YEAR = /^[a-z]+\.? \d{2}$/i;

/** "Aug 21" as August 2021; undefined where it can't be. */
const shortYear = ({ time }: TimeRef, { scan: { text }, today }: Build): Edtf | undefined => {
  const [, , month, day] = MONTH_DAY.exec(time.edtf) ?? [];
  if (month === undefined || !SHORT_YEAR.test(text.slice(time.span.start, time.span.end))) return undefined;
  const edtf = `20${String(day)}-${month}`;
  return edtf <= today ? edtf : undefined;
};

/** "Mar 20 ..., aug 21 ..., nov 21 ...": as many in a row, none earlier than the one before, are months of years. */
const IN_A_ROW = 3;

const areShortYears = (build: Build): boolean => {
  const all = build.times.flatMap((time) => shortYear(time, build) ?? []);
  return all.length >= IN_A_ROW && all.every((edtf, at) => edtf >= (all[at - 1] ?? ""));
};

/** The year told last, from when on what follows is looked for, and how many were taken so. */
type Since = { readonly year: TimeRef; readonly from: Temporal.PlainDate; readonly nth: number };

type Taken = Pick<InYearTold, "edtf" | "as"> & { readonly from: Temporal.PlainDate };

/** What a time told without its year may be after what was told before. */
const takenAs = (
  time: TimeRef,
  since: Since | undefined,
  inARow: boolean,
  build: Build,
): Taken | undefined => {
  const { again } = time.time;
  const short = shortYear(time, build);
  if (short !== undefined && (inARow || (since !== undefined && short >= since.year.time.edtf.slice(0, 4))))
    return { edtf: short, as: "short-year", from: Temporal.PlainDate.from(`${short}-01`) };
  const first = again === undefined || since === undefined ? undefined : firstFrom(again, since.from, build);
  return first && { ...first, as: "after" };
};

const toldBehind = (time: TimeRef, year: TimeRef, { times, today }: Build): InYearTold["then"] => {
  const behind = times.filter(({ from }) => from > time.from);
  if (behind.some((each) => each.time.namesYear && each.time.edtf > year.time.edtf)) return "later-year";
  const isNow = ({ time: { again, edtf, role } }: TimeRef): boolean =>
    again === undefined && role === "point" && edtf.slice(0, 4) === today.slice(0, 4);
  return behind.some(isNow) ? "now" : "nothing";
};

const inYearsTold = (build: Build): ReadonlyMap<TimeRef, InYearTold> => {
  const { times, today, scan } = build;
  const found = new Map<TimeRef, InYearTold>();
  const inARow = areShortYears(build);
  let since: Since | undefined;
  for (const time of times) {
    const { edtf, role, again, namesYear } = time.time;
    const from = daySpan(edtf, scan.moment.hemisphere)?.from;
    if (from === undefined || from.toString() > today) continue;
    if (role !== "point" && role !== "after-that") {
      if (namesYear) since = { year: time, from, nth: 0 };
      continue;
    }
    const taken = takenAs(time, since, inARow, build);
    if (taken === undefined) {
      if (namesYear) since = { year: time, from, nth: 0 };
      else if (since !== undefined && again === undefined && role === "point") since = { ...since, from };
    } else if (taken.from.toString() <= today) {
      const { year, nth } = since ?? { year: time, nth: 0 };
      const then = toldBehind(time, year, build);
      if (taken.edtf !== edtf) found.set(time, { edtf: taken.edtf, as: taken.as, year, then, nth });
      since = { year, from: taken.from, nth: nth + 1 };
    }
  }
  return found;
};

const told = new WeakMap<Build, ReadonlyMap<TimeRef, InYearTold>>();

/** The date that a time told without its year has in the year told before; undefined where none was, or it is the same. */
export const inYearTold = (time: TimeRef, build: Build): InYearTold | undefined => {
  const known = told.get(build) ?? inYearsTold(build);
  told.set(build, known);
  return known.get(time);
};
