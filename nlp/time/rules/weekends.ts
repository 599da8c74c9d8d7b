import { either, future, past } from "../meaning.ts";
import { weekendOf } from "../resolve.ts";
import { rule } from "../rule.ts";

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
  ...rule("weekend-before-last", ["the? weekend before last"], (_, { today }) =>
    past(weekendOf(today.subtract({ days: 14 })), 0.9),
  ),
  ...rule("next-weekend", ["next weekend"], (_, { today }) => future(weekendOf(today.add({ days: 7 })), 0.7)),
  ...rule("weekends-ago", ["<n> weekends ago|back"], ({ n }, { today }) =>
    Number.isInteger(n.low) ? past(weekendOf(today.subtract({ days: 7 * n.low })), 0.9) : undefined,
  ),
];
