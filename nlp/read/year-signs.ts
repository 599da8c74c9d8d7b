import type { Edtf } from "../../shared/record.ts";
import type { Build } from "./build.ts";
import type { Made } from "./made.ts";
import type { TimeRef } from "./scan.ts";
import type { InYearTold } from "./years-told.ts";

/** How many, roughly, as a sign. */
export const size = (count: number): string =>
  count <= 3 ? String(count) : count <= 6 ? "few" : count <= 12 ? "some" : count <= 30 ? "many" : "far";

/** How exact a date is, as a sign. */
export const precisionOf = (edtf: Edtf | null): string =>
  edtf === null
    ? "none"
    : edtf.includes("/")
      ? "range"
      : edtf.replace("~", "").length >= 10
        ? "day"
        : /-2[1-4]/.test(edtf)
          ? "season"
          : edtf.length >= 7
            ? "month"
            : "year";

/** The signs, as names, that tell whether a time is in the year told before it: how that was told, how far off, and what follows. */
export const yearSigns = (
  by: string,
  time: TimeRef,
  inYear: InYearTold | undefined,
  { scan: { tokens, times }, today }: Build,
  all: readonly Made[],
): string[] => {
  if (inYear === undefined) return [];
  const { year, then, nth, as } = inYear;
  const between = all.filter(({ span }) => span.from > year.from && span.from < time.from).length;
  const years = new Set(times.flatMap((each) => (each.time.namesYear ? [each.time.edtf.slice(0, 4)] : [])));
  const next = tokens.slice(time.to, time.to + 2).map((token) => token.norm);
  const marks = [
    `rule=${year.time.rule}`,
    `precision=${precisionOf(year.time.edtf)}`,
    `gap=${size(time.from - year.to)}`,
    `records=${size(between)}`,
    `nth=${size(nth)}`,
    `past=${size(Number(today.slice(0, 4)) - Number(year.time.edtf.slice(0, 4)))}`,
    `next=${next.join(" ")}`,
    `then=${then}`,
    `years=${size(years.size)}`,
  ];
  return [
    `by=${by} year-told`,
    `by=${by} year-told=${as}`,
    ...marks.map((mark) => `by=${by} year-told ${mark}`),
  ];
};
