import type { LineId } from "../history.ts";
import { cellsOf, type Evidence, type Weights, weigh } from "./grid.ts";
import type { FixKind } from "./priors.ts";
import { mix, type Spread, spreadOf } from "./spread.ts";

/** What the places of a rig teach about one kind of fix. */
export type Lessons = {
  readonly kind: FixKind;
  readonly spread: Spread;
  /** The rig after all of them. */
  readonly rig: Weights;
  readonly ofLine: ReadonlyMap<LineId, Weights>;
};

/** Weights of all that was seen in one place. */
export const allOf = (kind: FixKind, first: Evidence, others: readonly Evidence[]): Weights => {
  const weights = cellsOf(kind, first);
  for (const other of others) weigh(weights, cellsOf(kind, other));
  return weights;
};

/** What all that was seen in one place says of the rig. Duds are the rig's alone, so that one attempt is mixed without them. */
const lessonOf = (
  kind: FixKind,
  { toRig }: Spread,
  [first, ...others]: readonly Evidence[],
): Weights | undefined => {
  if (first === undefined) return undefined;
  if (others.length === 0) return cellsOf(kind, { sound: mix(toRig, first.sound), dud: first.dud });
  return mix(toRig, allOf(kind, first, others));
};

/** @param seen the attempts of that kind, by line: one place each */
export const lessonsOf = (
  kind: FixKind,
  seen: ReadonlyMap<LineId, readonly Evidence[]>,
  rigShare: number,
): Lessons => {
  const spread = spreadOf(kind, rigShare);
  const rig = spread.rig.slice();
  const ofLine = new Map<LineId, Weights>();
  for (const [line, evidence] of seen) {
    const lesson = lessonOf(kind, spread, evidence);
    if (lesson === undefined) continue;
    weigh(rig, lesson);
    ofLine.set(line, lesson);
  }
  return { kind, spread, rig, ofLine };
};
