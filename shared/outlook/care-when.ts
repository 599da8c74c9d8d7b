import { Temporal } from "temporal-polyfill";
import type { Hemisphere } from "../reading.ts";
import type { Candidate, CareChoice, CareInput, Done } from "./care-choice.ts";
import { CARE_ROWS, type CareRow, SEASONS, type Season } from "./care-table.ts";
import { lastWork } from "./care-work.ts";
import { type Day, dateOf, dayOf } from "./days.ts";
import { happeningWords } from "./happening.ts";
import { dayWords, everyWords, figures } from "./say.ts";
import type { Use } from "./use.ts";
import { dayOfUse, FAR_DAYS } from "./use-day.ts";

export const byInterval = (row: CareRow, done: Done, use: Use): Candidate[] => {
  const found: Candidate[] = [];
  for (const [unit, count] of Object.entries(row.every) as [keyof CareRow["every"], number][]) {
    if (unit === "days")
      found.push({
        day: done.day + count,
        reason: "time",
        why: `The usual interval is ${everyWords(count)}.`,
      });
    else {
      if (!use.kept(unit)) continue;
      const day = dayOfUse(use, unit, done.day, count);
      if (day < done.day + FAR_DAYS)
        found.push({
          day,
          reason: "use",
          why: `The usual interval is ${figures(count)} ${unit}.`,
        });
    }
  }
  return found;
};

const FIRST_MONTH: Record<Season, number> = { spring: 3, summer: 6, autumn: 9, winter: 12 };
/** Care done so shortly before a season counts for it. */
const EARLY_DAYS = 45;

/** First day of a meteorological season in a year of the rig's hemisphere. */
const seasonStart = (season: Season, year: number, hemisphere: Hemisphere): Day => {
  const month = FIRST_MONTH[season];
  const shifted = hemisphere === "south" ? ((month + 5) % 12) + 1 : month;
  return dayOf(new Temporal.PlainDate(year, shifted, 1));
};

export const bySeason = (row: CareRow, after: Day, hemisphere: Hemisphere): Candidate[] =>
  SEASONS.filter((season) => row.seasons?.includes(season)).flatMap((season) => {
    const { year } = dateOf(after);
    const days = [year - 1, year, year + 1, year + 2].map((one) => seasonStart(season, one, hemisphere));
    const day = days.find((start) => start - EARLY_DAYS > after);
    return day === undefined
      ? []
      : [{ day, reason: "season" as const, why: `It's a job for every ${season}.` }];
  });

const BEFORE_LEAVING_DAYS = 1;
const FRESH_DAYS = 7;

export const byTrip = (row: CareRow, done: Done | undefined, { trip, use }: CareInput): Candidate[] => {
  if (row.beforeTrip !== true || trip === null) return [];
  const from = dayOf(trip.from);
  if (from < use.today || (done !== undefined && done.day >= from - FRESH_DAYS)) return [];
  return [
    {
      day: Math.max(use.today, from - BEFORE_LEAVING_DAYS),
      reason: "trip",
      why: "It's one to do before every trip.",
    },
  ];
};

type AfterWork = NonNullable<CareRow["afterWork"]>;

/** After the first step of miles from the work that was not answered yet. */
const byMiles = ({ miles = [], why }: AfterWork, work: Day, done: Day | undefined, use: Use): Candidate[] => {
  const answered = done === undefined || done < work ? 0 : use.between("miles", work, done);
  const step = miles.find((each) => each > answered);
  if (step === undefined || !use.kept("miles")) return [];
  const day = dayOfUse(use, "miles", work, step);
  return [{ day, reason: "work", why: why.replace("{miles}", String(step)) }];
};

/** Again after so many miles or days from work that disturbed it. */
export const byWork = ({ afterWork }: CareRow, done: Done | undefined, input: CareInput): Candidate[] => {
  const work = afterWork && lastWork(input, afterWork.components, afterWork.actions)?.day;
  if (afterWork === undefined || work === undefined) return [];
  const { days, why } = afterWork;
  const answered = days === undefined || (done !== undefined && done.day >= work);
  return [
    ...byMiles(afterWork, work, done?.day, input.use),
    ...(answered ? [] : [{ day: work + days, reason: "work" as const, why }]),
  ];
};

/** After hail, a kerb, a time in storage: what was not seen to since. */
export const byEvent = (
  { afterEvents = [] }: CareRow,
  done: Done | undefined,
  { happened, use }: CareInput,
): Candidate[] =>
  afterEvents.flatMap(({ event, days }) => {
    const date = happened?.get(event);
    const day = date === undefined ? undefined : dayOf(date);
    if (day === undefined || (done !== undefined && done.day >= day)) return [];
    const why = `It's one to do after ${happeningWords(event)} (${dayWords(day, use.today).replace(/^(?:on|in) /, "")}).`;
    return [{ day: day + days, reason: "event", why }];
  });

/** First time of a row of which nothing is known: safety within four weeks, the rest spread out, so that they don't all come at once. */
export const firstTime = (row: CareRow, choice: CareChoice): Candidate => {
  const place = CARE_ROWS.indexOf(row);
  const spread = row.consequence === "safety" ? 2 + ((place * 5) % 26) : 10 + ((place * 7) % 50);
  const wait = Math.min(spread, row.every.days ?? spread);
  return { day: dayOf(choice.since) + wait, reason: "never", why: "I don't know of a last time yet." };
};
