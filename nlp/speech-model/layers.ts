import { float, type Graph, int, ints, TYPE } from "./graph.ts";
import { quantised, transposed } from "./quantise.ts";
import type { ModelShape, Precision, Weights } from "./shape.ts";

/** What the layers are built from; the table of words is as large as a layer and may have a precision of its own. */
export type Parts = {
  readonly shape: ModelShape;
  readonly weights: Weights;
  readonly precision: Precision;
  readonly words: Precision;
};

/** x · W for W [inner, outer], given as whole numbers with a scale a column: the input is quantised as it comes. */
export const timesQuantised = (g: Graph, x: string, values: string, scales: string): string => {
  const [whole = "", scale = "", zero = ""] = g.ops("DynamicQuantizeLinear", [x], 3);
  const none = g.constant("zero of int8", [], () => Int8Array.of(0));
  const product = g.op("Cast", [g.op("MatMulInteger", [whole, values, zero, none])], [int("to", TYPE.float)]);
  return g.op("Mul", [product, g.op("Mul", [scales, scale])]);
};

const timesWeight = (
  g: Graph,
  parts: Parts,
  x: string,
  name: string,
  inner: number,
  outer: number,
): string => {
  const turned = (): Float32Array => transposed(parts.weights(name, [outer, inner]), outer, inner);
  if (parts.precision === "fp32") return g.op("MatMul", [x, g.constant(name, [inner, outer], turned)]);
  const values = g.constant(`${name} int8`, [inner, outer], () => quantised(turned(), inner, outer).values);
  const scales = g.constant(`${name} scales`, [outer], () => quantised(turned(), inner, outer).scales);
  return timesQuantised(g, x, values, scales);
};

export const linear = (
  g: Graph,
  parts: Parts,
  x: string,
  name: string,
  [inner, outer]: readonly [number, number],
  bias = true,
): string => {
  const product = timesWeight(g, parts, x, `${name}.weight`, inner, outer);
  if (!bias) return product;
  return g.op("Add", [
    product,
    g.constant(`${name}.bias`, [outer], () => parts.weights(`${name}.bias`, [outer])),
  ]);
};

export const layerNorm = (g: Graph, { shape, weights }: Parts, x: string, name: string): string => {
  const vector = (kind: string): string =>
    g.constant(`${name}.${kind}`, [shape.width], () => weights(`${name}.${kind}`, [shape.width]));
  return g.op(
    "LayerNormalization",
    [x, vector("weight"), vector("bias")],
    [int("axis", -1), float("epsilon", 1e-5)],
  );
};

/** x · Φ(x), exact (Hendrycks and Gimpel 2016). */
export const gelu = (g: Graph, x: string): string => {
  const error = g.op("Erf", [g.op("Div", [x, g.number(Math.SQRT2)])]);
  return g.op("Mul", [g.op("Mul", [x, g.op("Add", [error, g.number(1)])]), g.number(0.5)]);
};

/** [batch, time, width] to [batch, heads, time, width / heads]. */
export const splitHeads = (g: Graph, { shape }: Parts, x: string): string => {
  const split = g.op("Reshape", [x, g.indices(0, -1, shape.heads, shape.width / shape.heads)]);
  return g.op("Transpose", [split], [ints("perm", [0, 2, 1, 3])]);
};

export const keysAndValues = (g: Graph, parts: Parts, x: string, name: string): readonly [string, string] => {
  const square = [parts.shape.width, parts.shape.width] as const;
  return [
    splitHeads(g, parts, linear(g, parts, x, `${name}.k_proj`, square, false)),
    splitHeads(g, parts, linear(g, parts, x, `${name}.v_proj`, square)),
  ];
};

/** Scaled dot-product attention (Vaswani et al. 2017); `mask` is added to the scores. */
export const attention = (
  g: Graph,
  parts: Parts,
  x: string,
  name: string,
  [keys, values]: readonly [string, string],
  mask?: string,
): string => {
  const { width, heads } = parts.shape;
  const queries = linear(g, parts, x, `${name}.q_proj`, [width, width]);
  const scaled = splitHeads(g, parts, g.op("Mul", [queries, g.number(1 / Math.sqrt(width / heads))]));
  const scores = g.op("MatMul", [scaled, g.op("Transpose", [keys], [ints("perm", [0, 1, 3, 2])])]);
  const masked = mask === undefined ? scores : g.op("Add", [scores, mask]);
  const shares = g.op("Softmax", [masked], [int("axis", -1)]);
  const mixed = g.op("Transpose", [g.op("MatMul", [shares, values])], [ints("perm", [0, 2, 1, 3])]);
  return linear(g, parts, g.op("Reshape", [mixed, g.indices(0, -1, width)]), `${name}.out_proj`, [
    width,
    width,
  ]);
};

export const feedForward = (g: Graph, parts: Parts, x: string, name: string): string => {
  const { width } = parts.shape;
  const inner = linear(g, parts, layerNorm(g, parts, x, `${name}.final_layer_norm`), `${name}.fc1`, [
    width,
    4 * width,
  ]);
  return g.op("Add", [x, linear(g, parts, gelu(g, inner), `${name}.fc2`, [4 * width, width])]);
};
