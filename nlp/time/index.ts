import type { Temporal } from "temporal-polyfill";
import type { Moment, Span } from "../../shared/reading.ts";
import type { Edtf, Exposure } from "../../shared/record.ts";
import { type Found, Scan } from "./find.ts";
import { withYearsInTurn } from "./in-turn.ts";
import { inTheirYear } from "./of-year.ts";
import { edtfOf, isBefore } from "./period.ts";
import { type Reference, referenceOf, type TimeOptions } from "./reference.ts";
import type { Direction, Meaning, Role } from "./rule.ts";
import { RULES } from "./rules/index.ts";
import { type Token, tokenize } from "./tokens.ts";
import { writtenDates } from "./written.ts";

export { type FoundNumber, findNumbers, type NumberKind, spokenNumber } from "./numbers.ts";
export type { Prefer, TimeOptions } from "./reference.ts";
export { regionOf } from "./region.ts";
export type { Direction, Role } from "./rule.ts";

/** A stretch of a text that speaks of a time. */
export type TimeMention = {
  readonly span: Span;
  /** Resolved against the moment of speaking. For "lasting" the moment less the length. */
  readonly edtf: Edtf;
  /** "lasting": how long something has gone on; "after-that": resolved against the anchor or the time named before. */
  readonly role: Role;
  readonly lasting?: Exposure;
  /** "either" when only the preference decided between past and future. */
  readonly direction: Direction;
  /** For what comes again ("in May", "on Friday"): the latest begun by a day (-1), or the first not over by it (1). */
  readonly again?: (day: Temporal.PlainDate, side: -1 | 1) => Edtf;
  /** Its year is told with it. */
  readonly namesYear: boolean;
  /** 0 to 1. Below 0.5 the words alone hardly carry it. */
  readonly sure: number;
  readonly rule: string;
};

/** What does not come again lies where it lies. */
const directionOf = ({ period, direction = "either" }: Meaning, { today }: Reference): Direction => {
  if (direction !== "either" || period.recurs !== undefined) return direction;
  if (isBefore(period.last, today)) return "past";
  return isBefore(today, period.from) ? "future" : "either";
};

const againIn = ({ period: { recurs } }: Meaning): Pick<TimeMention, "again"> =>
  recurs === undefined ? {} : { again: (day, side) => edtfOf(recurs(day, side)) };

const mention = (
  tokens: readonly Token[],
  reference: Reference,
  { at, next, rule, meaning, namesYear }: Found,
): TimeMention => ({
  ...againIn(meaning),
  span: { start: tokens[at]?.start ?? 0, end: tokens[next - 1]?.end ?? 0 },
  edtf: edtfOf(meaning.period),
  role: meaning.role ?? "point",
  ...(meaning.lasting === undefined ? {} : { lasting: meaning.lasting }),
  direction: directionOf(meaning, reference),
  namesYear,
  sure: meaning.sure ?? 0.9,
  rule,
});

/**
 * The times named in a text, from left to right, none overlapping, resolved against the moment of speaking.
 * What can lie on both sides of it goes to the past unless `prefer` says "future".
 * `anchor` is the time that "a week after that" counts from when the text names none before it.
 * Throws a RangeError when `moment.said` is no instant or `moment.zone` no IANA zone.
 */
export const findTimes = (
  text: string,
  moment: Moment,
  options: TimeOptions = {},
): readonly TimeMention[] => {
  const tokens = tokenize(text);
  const reference = referenceOf(moment, options);
  const found = new Scan(tokens, reference, RULES, writtenDates(text, tokens, reference)).all();
  const mentions = withYearsInTurn(tokens, found, reference).map((one) => mention(tokens, reference, one));
  return inTheirYear(text, mentions);
};
