import { daysOff } from "../holidays.ts";
import { either, past } from "../meaning.ts";
import { about, dayOf, isBefore, type Period } from "../period.ts";
import type { Reference } from "../reference.ts";
import { rule } from "../rule.ts";
import { weekendAround } from "./feasts.ts";

const YEARS = [-1, 0, 1];
const LONG = 3;

const lengthOf = ({ from, last }: Period): number => last.since(from).days + 1;

/** The latest one begun by today, or the next one not yet over; `over` when the running one does not count. */
const nearest = (
  periods: readonly Period[],
  { today, prefer }: Reference,
  over = false,
): Period | undefined => {
  const sorted = periods.toSorted((a, b) => (isBefore(a.from, b.from) ? -1 : 1));
  if (prefer === "future") return sorted.find(({ last }) => !isBefore(last, today));
  return sorted.findLast((period) => (over ? isBefore(period.last, today) : !isBefore(today, period.from)));
};

const days = (reference: Reference): readonly Period[] =>
  daysOff(reference.region).flatMap(({ on }) =>
    YEARS.map((years) => dayOf(on(reference.today.year + years))),
  );

const weekends = (reference: Reference): readonly Period[] =>
  days(reference)
    .map(weekendAround)
    .filter((weekend) => lengthOf(weekend) >= LONG);

/** "The bank holiday", "the long weekend": whichever came last where the speaker lives. */
export const DAY_OFF_RULES = [
  ...rule(
    "day-off",
    ["on|over|at|during? the? bank|public|stat|statutory holiday", "on? the holiday monday|friday"],
    (_, reference) => {
      const day = nearest(days(reference), reference);
      return either(day && about(day), 0.85);
    },
  ),
  ...rule(
    "day-off-weekday",
    [
      "on|over|at? the? last? bank|public|stat holiday <weekday>",
      "on|over|at? the? <weekday> bank|public|stat holiday",
      "on|over|at? the? holiday <weekday>",
    ],
    ({ weekday }, reference) =>
      either(
        nearest(
          days(reference).filter(({ from }) => from.dayOfWeek === weekday),
          reference,
        ),
        0.9,
      ),
  ),
  ...rule(
    "long-weekend",
    [
      "on|over|at|during? the? bank|public|stat holiday weekend",
      "on|over|at|during the? long weekend",
      "the long weekend",
    ],
    (_, reference) => either(nearest(weekends(reference), reference), 0.85),
  ),
  ...rule(
    "last-long-weekend",
    [
      "on|over|at|during? the? last long weekend",
      "on|over|at|during? this? past|last bank holiday weekend",
      "on|over? the? long weekend just? gone|past",
    ],
    (_, reference) => past(nearest(weekends(reference), reference, true), 0.85),
  ),
];
