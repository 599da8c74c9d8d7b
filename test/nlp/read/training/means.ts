import type { LearntLayers } from "../../../../nlp/read/layered.ts";
import type { Learnt } from "../../../../nlp/read/linear.ts";

const BYTE = 127;
const TINY = 1e-9;
/** Weights smaller than this are not kept. */
const SMALLEST = 0.02;

type Rows = ReadonlyMap<string, readonly number[]>;

const rowsOf = (signs: string, base64: string, unit: number, width: number): Rows => {
  const { buffer, byteOffset, length } = Buffer.from(base64, "base64");
  const bytes = new Int8Array(buffer, byteOffset, length);
  return new Map(
    signs
      .split("\n")
      .map((sign, at) => [
        sign,
        Array.from(bytes.subarray(at * width, (at + 1) * width), (step) => step * unit),
      ]),
  );
};

const packed = (rows: Rows) => {
  const all = [...rows.values()].flat();
  const unit = all.reduce((top, weight) => Math.max(top, Math.abs(weight)), TINY) / BYTE;
  const bytes = Int8Array.from(all, (weight) => Math.round(weight / unit));
  return { signs: [...rows.keys()].join("\n"), base64: Buffer.from(bytes.buffer).toString("base64"), unit };
};

const bothSigns = (one: Rows, other: Rows): readonly string[] => [
  ...new Set([...one.keys(), ...other.keys()]),
];

const zeros = (count: number): readonly number[] => new Array<number>(count).fill(0);

const half = (a: number, b: number): number => (a + b) / 2;

/** Where in the classes of the one those of the other stand. Throws a RangeError when they are not the same classes. */
const placesIn = (other: readonly string[], one: readonly string[]): readonly number[] => {
  const places = one.map((name) => other.indexOf(name));
  if (places.includes(-1) || other.length !== one.length)
    throw new RangeError(`Not of the same classes: ${one.join(", ")}; ${other.join(", ")}`);
  return places;
};

/** A judge whose sums are the means of those of two that were learnt of the same classes. */
export const meanOf = (one: Learnt, other: Learnt): Learnt => {
  const places = placesIn(other.of, one.of);
  const width = one.of.length;
  const [mine, theirs] = [one, other].map((each) => rowsOf(each.signs, each.weights, each.unit, width)) as [
    Rows,
    Rows,
  ];
  const rows = bothSigns(mine, theirs)
    .map((sign) => {
      const [a, b] = [mine.get(sign), theirs.get(sign)];
      return [sign, places.map((place, k) => half(a?.[k] ?? 0, b?.[place] ?? 0))] as const;
    })
    .filter(([, weights]) => weights.some((weight) => Math.abs(weight) >= SMALLEST));
  const { signs, base64, unit } = packed(new Map(rows));
  return {
    of: one.of,
    bias: places.map((place, k) => half(one.bias[k] ?? 0, other.bias[place] ?? 0)),
    signs,
    weights: base64,
    unit,
  };
};

/** The same of two with a layer between: the hidden units of both beside each other. */
export const meanOfLayers = (one: LearntLayers, other: LearntLayers): LearntLayers => {
  const places = placesIn(other.of, one.of);
  const [width, more] = [one.start.length, other.start.length];
  const mine = rowsOf(one.signs, one.inner, one.unit, width);
  const theirs = rowsOf(other.signs, other.inner, other.unit, more);
  const rows = bothSigns(mine, theirs).map(
    (sign) => [sign, [...(mine.get(sign) ?? zeros(width)), ...(theirs.get(sign) ?? zeros(more))]] as const,
  );
  const { signs, base64, unit } = packed(new Map(rows));
  const theirOuter = other.start.flatMap((_, j) =>
    places.map((place) => other.outer[j * places.length + place] ?? 0),
  );
  return {
    of: one.of,
    signs,
    inner: base64,
    unit,
    start: [...one.start, ...other.start],
    outer: [...one.outer, ...theirOuter].map((weight) => weight / 2),
    bias: places.map((place, k) => half(one.bias[k] ?? 0, other.bias[place] ?? 0)),
  };
};
