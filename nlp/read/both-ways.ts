import { decided, type LearntLayers, layering } from "./layered.ts";
import { type Learnt, partsAt, weighing } from "./linear.ts";
import { addedUpTogether, together } from "./sign-bytes.ts";

/**
 * How sure of each of the classes, of which just one is right, given the signs seen: the mean of a layered and a linear judge.
 * The linear one may know one more class, of nothing at all, behind the others.
 */
export const bothWays = (
  layers: LearntLayers,
  plain: Learnt,
  classes: readonly string[],
): ((seen: readonly string[]) => number[]) => {
  const deep = layering(layers, classes);
  const flat = weighing(plain, plain.of.includes(NOTHING) ? [...classes, NOTHING] : classes);
  const signs = together(deep.inner, flat.weights);
  return (seen) => {
    const [inner, weights] = addedUpTogether(signs, seen);
    const parts = partsAt(flat, weights);
    return decided(deep, inner).map((each, at) => (each + (parts[at] ?? 0)) / 2);
  };
};
const NOTHING = "";
