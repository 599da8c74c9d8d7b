import { branch, Graph, int, port, TYPE } from "./graph.ts";
import { attention, feedForward, keysAndValues, layerNorm, type Parts } from "./layers.ts";
import { embedded, turnedTable, wordScores } from "./words.ts";

const SIDES = ["decoder", "encoder"] as const;
const CACHED = ["key", "value"] as const;
/** Names of what is kept from step to step, in the order in which it is asked for. */
const cacheNames = (layers: number): string[] =>
  Array.from({ length: layers }, (_, layer) =>
    SIDES.flatMap((side) => CACHED.map((kind) => `${layer}.${side}.${kind}`)),
  ).flat();

const lengthOf = (g: Graph, value: string, axis: number): string =>
  g.op("Gather", [g.op("Shape", [value]), g.index(axis)], [int("axis", 0)]);

const positions = (g: Graph, { shape, weights }: Parts, start: string, length: string): string => {
  const name = "decoder.embed_positions";
  const table = g.constant(name, [shape.context, shape.width], () =>
    weights(name, [shape.context, shape.width]),
  );
  const places = g.op("Range", [start, g.op("Add", [start, length]), g.index(1)]);
  return g.op("Gather", [table, places], [int("axis", 0)]);
};

/** No word may look at those after it. */
const causalMask = (g: Graph, length: string): string => {
  const row = g.op("Range", [g.index(0), length, g.index(1)]);
  const later = g.op("Greater", [
    g.op("Unsqueeze", [row, g.indices(0)]),
    g.op("Unsqueeze", [row, g.indices(1)]),
  ]);
  return g.op("Where", [later, g.number(-1e9), g.number(0)]);
};

type Cache = Map<string, string>;

/** A decoder layer; what later steps need is put into `cache`. With `past`, the earlier steps are not computed again. */
const decoderLayer = (
  g: Graph,
  parts: Parts,
  x: string,
  layer: number,
  cache: Cache,
  past: boolean,
  mask?: string,
): string => {
  const name = `decoder.layers.${layer}`;
  const kept = (side: string): [string, string] => [
    `past_key_values.${layer}.${side}.key`,
    `past_key_values.${layer}.${side}.value`,
  ];
  const keep = (side: string, [key, value]: readonly [string, string]): readonly [string, string] => {
    cache.set(`${layer}.${side}.key`, key).set(`${layer}.${side}.value`, value);
    return [key, value];
  };
  const grown = ([key, value]: readonly [string, string]): readonly [string, string] => {
    const join = (before: string, now: string): string => g.op("Concat", [before, now], [int("axis", 2)]);
    const [keys, values] = kept("decoder");
    return past ? [join(keys, key), join(values, value)] : [key, value];
  };
  const normed = layerNorm(g, parts, x, `${name}.self_attn_layer_norm`);
  const own = keep("decoder", grown(keysAndValues(g, parts, normed, `${name}.self_attn`)));
  const told = g.op("Add", [x, attention(g, parts, normed, `${name}.self_attn`, own, mask)]);
  const listening = layerNorm(g, parts, told, `${name}.encoder_attn_layer_norm`);
  const sound = past
    ? kept("encoder")
    : keysAndValues(g, parts, "encoder_hidden_states", `${name}.encoder_attn`);
  const across = attention(g, parts, listening, `${name}.encoder_attn`, keep("encoder", sound));
  return feedForward(g, parts, g.op("Add", [told, across]), name);
};

/** The decoder with or without a past, as one branch of the merged graph. */
const decoderBranch = (root: Graph, parts: Parts, past: boolean): Graph => {
  const g = new Graph(root);
  const { decoder_layers: layers, vocabulary, heads, width } = parts.shape;
  const length = lengthOf(g, "input_ids", 1);
  const start = past ? lengthOf(g, "past_key_values.0.decoder.key", 2) : g.index(0);
  const cache: Cache = new Map();
  const mask = past ? undefined : causalMask(g, length);
  let x = g.op("Add", [embedded(g, parts), positions(g, parts, start, length)]);
  for (let layer = 0; layer < layers; layer++) x = decoderLayer(g, parts, x, layer, cache, past, mask);
  const ending = past ? "later" : "first";
  const give = (value: string, name: string, dims: (number | string)[]): void => {
    g.name(value, `${name} ${ending}`);
    g.outputs.push(port(`${name} ${ending}`, TYPE.float, dims));
  };
  give(wordScores(g, parts, layerNorm(g, parts, x, "decoder.layer_norm")), "logits", [
    "batch",
    "length",
    vocabulary,
  ]);
  for (const name of cacheNames(layers))
    give(cache.get(name) ?? "", `present.${name}`, ["batch", heads, `${name} ${ending}`, width / heads]);
  return g;
};

/** The decoder as one graph that is told whether a past is given, as @xenova/transformers runs it. */
export const decoderGraph = (parts: Parts): Graph => {
  const { decoder_layers: layers, vocabulary, heads, width } = parts.shape;
  const root = new Graph();
  const cached = (prefix: string, name: string): ReturnType<typeof port> =>
    port(`${prefix}.${name}`, TYPE.float, [
      "batch",
      heads,
      `${prefix} ${name.split(".")[1] ?? ""}`,
      width / heads,
    ]);
  root.inputs.push(
    port("encoder_hidden_states", TYPE.float, ["batch", "encoder length", width]),
    port("input_ids", TYPE.int64, ["batch", "length"]),
    ...cacheNames(layers).map((name) => cached("past_key_values", name)),
    port("use_cache_branch", TYPE.bool, [1]),
  );
  root.outputs.push(
    port("logits", TYPE.float, ["batch", "length", vocabulary]),
    ...cacheNames(layers).map((name) => cached("present", name)),
  );
  turnedTable(root, parts);
  const first = decoderBranch(root, parts, false).asBranch("first");
  const later = decoderBranch(root, parts, true).asBranch("later");
  const results = root.outputs.map((output) => output.name ?? "");
  root.named("Squeeze", ["use_cache_branch"], ["has past"]);
  root.named("If", ["has past"], results, [branch("then_branch", later), branch("else_branch", first)]);
  return root;
};
