import { Graph, ints, port, TYPE } from "./graph.ts";
import { attention, feedForward, gelu, keysAndValues, layerNorm, type Parts } from "./layers.ts";

const convolution = (
  g: Graph,
  { shape, weights }: Parts,
  x: string,
  name: string,
  from: number,
  stride: number,
): string => {
  const weight = g.constant(`${name}.weight`, [shape.width, from, 3], () =>
    weights(`${name}.weight`, [shape.width, from, 3]),
  );
  const bias = g.constant(`${name}.bias`, [shape.width], () => weights(`${name}.bias`, [shape.width]));
  const form = [ints("kernel_shape", [3]), ints("strides", [stride]), ints("pads", [1, 1])];
  return gelu(g, g.op("Conv", [x, weight, bias], form));
};

const encoderLayer = (g: Graph, parts: Parts, x: string, name: string): string => {
  const normed = layerNorm(g, parts, x, `${name}.self_attn_layer_norm`);
  const attended = attention(
    g,
    parts,
    normed,
    `${name}.self_attn`,
    keysAndValues(g, parts, normed, `${name}.self_attn`),
  );
  return feedForward(g, parts, g.op("Add", [x, attended]), name);
};

/** Log-mel windows to what the decoder listens to (Radford et al. 2022). */
export const encoderGraph = (parts: Parts): Graph => {
  const { width, mels, frames, encoder_layers: layers } = parts.shape;
  const g = new Graph();
  g.inputs.push(port("input_features", TYPE.float, ["batch", mels, 2 * frames]));
  g.outputs.push(port("last_hidden_state", TYPE.float, ["batch", frames, width]));
  const heard = convolution(g, parts, "input_features", "encoder.conv1", mels, 1);
  const halved = convolution(g, parts, heard, "encoder.conv2", width, 2);
  const places = g.constant("encoder.embed_positions", [frames, width], () =>
    parts.weights("encoder.embed_positions", [frames, width]),
  );
  let x = g.op("Add", [g.op("Transpose", [halved], [ints("perm", [0, 2, 1])]), places]);
  for (let layer = 0; layer < layers; layer++) x = encoderLayer(g, parts, x, `encoder.layers.${layer}`);
  g.name(layerNorm(g, parts, x, "encoder.layer_norm"), "last_hidden_state");
  return g;
};
