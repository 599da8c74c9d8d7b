import type { Span } from "../../shared/reading.ts";
import type { Edtf } from "../../shared/record.ts";
import type { Direction, Role } from "./rule.ts";

type Named = {
  readonly span: Span;
  readonly edtf: Edtf;
  readonly role: Role;
  readonly direction: Direction;
  readonly namesYear: boolean;
};

const YEAR = /^\d{4}$/;
/** A day, month or season of some year. */
const PART = /^\d{4}(-\d{2}(?:-\d{2})?)~?$/;
const BETWEEN = /^\s*(?:of|in)\s+$/i;
/** "Of 2024", "in last year": a year may be told with a preposition of its own. */
const OPENS = /^(?:of|in)\b/i;

const joins = (text: string, before: Named, year: Named): boolean => {
  if (before.role !== "point" || !YEAR.test(year.edtf)) return false;
  const between = text.slice(before.span.end, year.span.start);
  return BETWEEN.test(between) || (between.trim() === "" && OPENS.test(text.slice(year.span.start)));
};

/** "The summer of last year", "march of 2023": a part of a year and the year behind it are one time. */
export const inTheirYear = <T extends Named>(text: string, mentions: readonly T[]): readonly T[] => {
  const out: T[] = [];
  for (const mention of mentions) {
    const before = out.at(-1);
    const part = before === undefined ? undefined : PART.exec(before.edtf)?.[1];
    if (before === undefined || part === undefined || !joins(text, before, mention)) {
      out.push(mention);
      continue;
    }
    const span = { start: before.span.start, end: mention.span.end };
    out[out.length - 1] = {
      ...before,
      span,
      edtf: `${mention.edtf}${part}`,
      direction: mention.direction,
      namesYear: mention.namesYear,
    };
  }
  return out;
};
