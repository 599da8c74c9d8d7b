import type { Temporal } from "temporal-polyfill";
import { either } from "../meaning.ts";
import { dayOf, type Period } from "../period.ts";
import type { Reference } from "../reference.ts";
import { rule } from "../rule.ts";

type Zoned = Temporal.ZonedDateTime;
/** Zones that change no more give nothing. */
const MOST_CHANGES = 4;

const isForward = (change: Zoned): boolean =>
  change.offsetNanoseconds > change.subtract({ hours: 6 }).offsetNanoseconds;

/** The nearest day in the preferred direction on which the clocks of the zone changed; `forward` in spring. */
const clockChange = ({ now, prefer }: Reference, forward: boolean | undefined): Period | undefined => {
  const direction = prefer === "past" ? "previous" : "next";
  let change = now.getTimeZoneTransition(direction);
  for (let i = 0; change !== null && i < MOST_CHANGES; i++) {
    if (forward === undefined || isForward(change) === forward) return dayOf(change.toPlainDate());
    change = change.getTimeZoneTransition(direction);
  }
  return undefined;
};

export const CLOCK_RULES = [
  ...rule(
    "clocks-back",
    ["when? the clocks went|go|fell|changed|turned back", "when? we turned the clocks back"],
    (_, reference) => either(clockChange(reference, false), 0.85),
  ),
  ...rule(
    "clocks-forward",
    [
      "when? the clocks went|go|sprang|changed|turned forward|ahead",
      "when? we turned the clocks ahead|forward",
    ],
    (_, reference) => either(clockChange(reference, true), 0.85),
  ),
  ...rule("clocks-changed", ["when? the clocks changed|change", "the time change"], (_, reference) =>
    either(clockChange(reference, undefined), 0.75),
  ),
];
