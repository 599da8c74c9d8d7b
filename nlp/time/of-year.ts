import type { TimeMention } from "./index.ts";

const YEAR = /^\d{4}$/;
/** A day, month or season of some year. */
const PART = /^\d{4}(-\d{2}(?:-\d{2})?)~?$/;
const BETWEEN = /^\s*(?:of|in)\s+$/i;
/** "Of 2024", "in last year": a year may be told with a preposition of its own. */
const OPENS = /^(?:of|in)\b/i;

/** "The summer of last year", "march of 2023": a part of a year and the year behind it are one time. */
export const inTheirYear = (text: string, mentions: readonly TimeMention[]): readonly TimeMention[] =>
  mentions.reduce<TimeMention[]>((out, mention) => {
    const before = out.at(-1);
    const part = before === undefined ? undefined : PART.exec(before.edtf)?.[1];
    if (before === undefined || part === undefined || before.role !== "point" || !YEAR.test(mention.edtf))
      return [...out, mention];
    const between = text.slice(before.span.end, mention.span.start);
    const joined =
      BETWEEN.test(between) ||
      (between.trim() === "" && OPENS.test(text.slice(mention.span.start, mention.span.end)));
    if (!joined) return [...out, mention];
    const span = { start: before.span.start, end: mention.span.end };
    return [...out.slice(0, -1), { ...before, span, edtf: `${mention.edtf}${part}`, direction: mention.direction }];
  }, []);
