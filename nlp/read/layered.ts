import { partsOf } from "./linear.ts";
import { addedUp, type SignBytes, unpacked } from "./sign-bytes.ts";

/** A judge with one hidden layer, as it is kept. */
export type LearntLayers = {
  readonly of: readonly string[];
  /** The signs, one a line. */
  readonly signs: string;
  /** For each sign a signed byte for each hidden unit, in base 64. */
  readonly inner: string;
  /** What one in a byte weighs. */
  readonly unit: number;
  /** What each hidden unit holds without any sign. */
  readonly start: readonly number[];
  /** For each hidden unit its weights for the classes, one unit after the other. */
  readonly outer: readonly number[];
  /** What holds for each class without any hidden unit. */
  readonly bias: readonly number[];
};

/** Layers ready to weigh with. */
export type Layers = {
  /** Where in the list asked for each learnt class stands; -1 where it isn't asked for. */
  readonly place: readonly number[];
  readonly asked: number;
  readonly inner: SignBytes;
  readonly unit: number;
  readonly start: readonly number[];
  readonly outer: readonly number[];
  readonly bias: readonly number[];
};

/** The layers, with the classes in the order of `classes`. */
export const layering = (learnt: LearntLayers, classes: readonly string[]): Layers => {
  const { of, signs, inner, unit, start, outer, bias } = learnt;
  return {
    place: of.map((name) => classes.indexOf(name)),
    asked: classes.length,
    inner: unpacked(signs, inner, start.length),
    unit,
    start,
    outer,
    bias,
  };
};

/** How sure of each of the classes of which just one is right, adding up to 1, given what the signs' vectors add up to. */
export const decided = (layers: Layers, steps: Int32Array): number[] => {
  const { place, asked, unit, start, outer, bias } = layers;
  const sums = [...bias];
  const classes = bias.length;
  for (let j = 0; j < start.length; j++) {
    const held = (start[j] as number) + (steps[j] as number) * unit;
    if (held <= 0) continue;
    for (let k = 0; k < classes; k++)
      sums[k] = (sums[k] as number) + held * (outer[j * classes + k] as number);
  }
  const shares = partsOf(sums);
  const rated = new Array<number>(asked).fill(0);
  for (const [k, at] of place.entries()) if (at >= 0) rated[at] = shares[k] as number;
  return rated;
};

/**
 * How sure of each of the classes of which just one is right, adding up to 1, given the signs seen: one hidden layer of
 * rectified units over the sum of the signs' vectors, and a multinomial logit over them. A class never met gets nothing.
 */
export const layered = (layers: Layers, seen: readonly string[]): number[] =>
  decided(layers, addedUp(layers.inner, seen));
