import type { LineId } from "../history.ts";
import { type Evidence, gather, weigh } from "./grid.ts";
import { allOf, type Lessons, lessonsOf } from "./lessons.ts";
import { type Prediction, predict } from "./prediction.ts";
import type { FixKind } from "./priors.ts";
import type { Settings } from "./settings.ts";
import { mix } from "./spread.ts";

/** What the rig's other places teach when nothing is known of them. */
export const noLessons = (kind: FixKind, { rigShare }: Settings): Lessons =>
  lessonsOf(kind, new Map(), rigShare);

/**
 * Prediction for a fix on a line from what the rig's other places teach about its kind and from the earlier attempts in
 * its own. The fix's own looks are left out: they cut the prediction off, they do not shape it.
 */
export const believe = (
  { kind, spread, rig, ofLine }: Lessons,
  line: LineId | null,
  earlier: readonly Evidence[],
): Prediction => {
  const own = line === null ? undefined : ofLine.get(line);
  const [first, ...others] = earlier;
  if (first === undefined) return predict(kind, gather(kind, rig, own), spread.failing);
  const elsewhere = own === undefined ? rig : rig.map((weight, cell) => weight / (own[cell] ?? 1));
  const weights = mix(spread.toPlace, elsewhere);
  weigh(weights, allOf(kind, first, others));
  return predict(kind, gather(kind, weights));
};
