import type { LineId } from "../history.ts";
import type { Evidence } from "./grid.ts";
import { expectedIn, type Lessons, lessonsOf } from "./lessons.ts";
import { type Prediction, predict } from "./prediction.ts";
import type { FixKind } from "./priors.ts";
import type { Settings } from "./settings.ts";

/** What the rig's other places teach when nothing is known of them. */
export const noLessons = (kind: FixKind, { rigShare }: Settings): Lessons =>
  lessonsOf(kind, new Map(), rigShare);

/**
 * Prediction for a fix on a line from what the rig's other places teach about its kind and from the earlier attempts in
 * its own. The fix's own looks are left out: they cut the prediction off, they do not shape it.
 */
export const believe = (lessons: Lessons, line: LineId | null, earlier: readonly Evidence[]): Prediction =>
  predict(lessons.kind, expectedIn(lessons, line, earlier));
