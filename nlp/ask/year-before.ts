import type { Before, Question } from "./question.ts";

/** The year that a question asked about, where it was one. */
const yearAsked = (question: Question): string | undefined => {
  const period = "period" in question ? question.period : null;
  if (period?.from == null || period.to === null) return undefined;
  const [first, last] = [period.from.slice(0, 4), period.to.slice(0, 4)];
  const endsWithIt = period.to === `${String(Number(first) + 1)}-01-01`;
  return first === last || endsWithIt ? first : undefined;
};

const yearIn = (date: string | null | undefined): string | undefined => /^\d{4}/.exec(date ?? "")?.[0];

const THAT_YEAR = /\b(?:that|the same|that same|said) year\b(?! (?:before|after))/gi;
/** "That spring" may be one of steel, but not behind these words. */
const THAT_SEASON =
  /\b(?:(?:in|over|during|all) (?:of )?(?:that|the same) (spring|summer|autumn|fall|winter)|(?:that|the same) (summer|autumn|fall|winter)(?=\s*(?:[,?.!;]|$)))(?! (?:of|in|back)\b| (?:19|20)\d\d| twenty)/gi;

/** "And for 2023, which things were worked on that year": the year that the words themselves name. */
const yearNamed = (text: string): string | undefined => /\b(?:19[89]|20[0-4])\d\b/.exec(text)?.[0];

/** "The autumn of that year", "over that summer": of the year named, else asked about before, else of the work that was shown. */
export const inThatYear = (text: string, before: Before | null): string => {
  const year =
    yearNamed(text) ?? (before === null ? undefined : (yearAsked(before.question) ?? yearIn(before.date)));
  const ofYear = year === undefined ? "" : ` ${year}`;
  return text
    .replace(THAT_YEAR, (phrase) => year ?? phrase)
    .replace(
      THAT_SEASON,
      (_, one: string | undefined, other: string | undefined) => `in ${one ?? other ?? ""}${ofYear}`,
    );
};
