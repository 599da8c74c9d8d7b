import type { Moment, Span } from "../../shared/reading.ts";
import type { Edtf, Exposure } from "../../shared/record.ts";
import { type Found, Scan } from "./find.ts";
import { edtfOf, isBefore } from "./period.ts";
import { type Reference, referenceOf, type TimeOptions } from "./reference.ts";
import type { Direction, Meaning, Role } from "./rule.ts";
import { indexRules } from "./rule-index.ts";
import { AGO } from "./rules/ago.ts";
import { BESIDE } from "./rules/beside.ts";
import { DAYS } from "./rules/days.ts";
import { EDGES } from "./rules/edges.ts";
import { FEASTS_RULES } from "./rules/feasts.ts";
import { MONTH_DAY_RULES } from "./rules/month-days.ts";
import { MONTH_RULES } from "./rules/months.ts";
import { ORDER } from "./rules/order.ts";
import { RANGES } from "./rules/ranges.ts";
import { SEASONS_RULES } from "./rules/seasons.ts";
import { YEARS_RULES } from "./rules/years.ts";
import { type Token, tokenize } from "./tokens.ts";
import { writtenDates } from "./written.ts";

export { type FoundNumber, findNumbers, type NumberKind, spokenNumber } from "./numbers.ts";
export type { Prefer, TimeOptions } from "./reference.ts";
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
  /** 0 to 1. Below 0.5 the words alone hardly carry it. */
  readonly sure: number;
  readonly rule: string;
};

const RULES = indexRules([
  ...DAYS,
  ...MONTH_RULES,
  ...MONTH_DAY_RULES,
  ...SEASONS_RULES,
  ...FEASTS_RULES,
  ...YEARS_RULES,
  ...BESIDE,
  ...RANGES,
  ...ORDER,
  ...AGO,
  ...EDGES,
]);

/** What does not come again lies where it lies. */
const directionOf = ({ period, direction = "either" }: Meaning, { today }: Reference): Direction => {
  if (direction !== "either" || period.recurs !== undefined) return direction;
  if (isBefore(period.last, today)) return "past";
  return isBefore(today, period.from) ? "future" : "either";
};

const mention = (
  tokens: readonly Token[],
  reference: Reference,
  { at, next, rule, meaning }: Found,
): TimeMention => ({
  span: { start: tokens[at]?.start ?? 0, end: tokens[next - 1]?.end ?? 0 },
  edtf: edtfOf(meaning.period),
  role: meaning.role ?? "point",
  ...(meaning.lasting === undefined ? {} : { lasting: meaning.lasting }),
  direction: directionOf(meaning, reference),
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
  return new Scan(tokens, reference, RULES, writtenDates(text, tokens, reference))
    .all()
    .map((found) => mention(tokens, reference, found));
};
