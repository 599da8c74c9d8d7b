import type { Question } from "./question.ts";

const THAT_YEAR = /\b(?:that|the same|that same|said) year\b(?! (?:before|after))/gi;

/** The year that the question before asked about, where it was one. */
const yearOf = (before: Question | null): string | undefined => {
  const period = before !== null && "period" in before ? before.period : null;
  if (period?.from == null || period.to === null) return undefined;
  const [first, last] = [period.from.slice(0, 4), period.to.slice(0, 4)];
  const endsWithIt = period.to === `${String(Number(first) + 1)}-01-01`;
  return first === last || endsWithIt ? first : undefined;
};

/** "The autumn of that year", after a question about a year. */
export const inThatYear = (text: string, before: Question | null): string => {
  const year = yearOf(before);
  return year === undefined ? text : text.replace(THAT_YEAR, year);
};
