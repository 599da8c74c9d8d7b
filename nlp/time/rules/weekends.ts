import { nthWeekday } from "../holidays.ts";
import { either, future, past } from "../meaning.ts";
import { derived } from "../period.ts";
import { weekendOf } from "../resolve.ts";
import { rule } from "../rule.ts";

const SATURDAY = 6;
const NTH: ReadonlyMap<string, number> = new Map([
  ["first", 1],
  ["second", 2],
  ["third", 3],
  ["fourth", 4],
  ["last", -1],
]);

export const WEEKEND_RULES = [
  ...rule(
    "weekend",
    ["this weekend", "over|on|at|during|for the weekend", "the weekend", "over|at|on weekend"],
    (_, { today, prefer }) =>
      either(weekendOf(prefer === "past" && today.dayOfWeek < 6 ? today.subtract({ days: 7 }) : today), 0.85),
  ),
  ...rule("last-weekend", ["on|over? last weekend"], (_, { today }) =>
    past(weekendOf(today.subtract({ days: 7 })), 0.85),
  ),
  ...rule(
    "past-weekend",
    ["on|over? this past weekend", "on|over|at|during? the? weekend just? gone|past"],
    (_, { today }) => past(weekendOf(today.dayOfWeek < 6 ? today.subtract({ days: 7 }) : today), 0.9),
  ),
  ...rule("coming-weekend", ["on|over? this? coming|upcoming weekend"], (_, { today }) =>
    future(weekendOf(today), 0.9),
  ),
  ...rule(
    "weekend-in-month",
    [
      "on|over|in? the? first|second|third|fourth|last weekend of|in <when>",
      "on|over? the? weekend at the end of <when>",
    ],
    ({ when }, _reference, { tokens, at, next }) => {
      if (when.grain !== "month") return undefined;
      const said = tokens.slice(at, next).find(({ word }) => NTH.has(word) || word === "end")?.word ?? "";
      const nth = NTH.get(said) ?? -1;
      return either(
        derived(when, ({ from }) => weekendOf(nthWeekday(from.year, from.month, SATURDAY, nth))),
        0.9,
      );
    },
  ),
  ...rule("weekend-before-last", ["the? weekend before last"], (_, { today }) =>
    past(weekendOf(today.subtract({ days: 14 })), 0.9),
  ),
  ...rule("next-weekend", ["next weekend"], (_, { today }) => future(weekendOf(today.add({ days: 7 })), 0.7)),
  ...rule("weekends-ago", ["<n> weekends ago|back"], ({ n }, { today }) =>
    Number.isInteger(n.low) ? past(weekendOf(today.subtract({ days: 7 * n.low })), 0.9) : undefined,
  ),
];
