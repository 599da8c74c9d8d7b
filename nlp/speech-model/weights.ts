import { z } from "zod";
import type { Weights } from "./shape.ts";

const headerSchema = z.record(
  z.string(),
  z.object({
    dtype: z.literal("F32"),
    shape: z.array(z.number().int()),
    data_offsets: z.tuple([z.number(), z.number()]),
  }),
);

const sizeOf = (dims: readonly number[]): number => dims.reduce((product, n) => product * n, 1);

/** The arrays of a safetensors file: eight bytes of header length, a JSON header, little-endian floats. */
export const weightsOf = (file: Buffer): Weights => {
  const dataAt = 8 + Number(file.readBigUInt64LE(0));
  const header = headerSchema.parse(JSON.parse(file.toString("utf8", 8, dataAt)));
  return (name, dims) => {
    const entry = header[name];
    if (entry === undefined) throw new Error(`The weights hold no "${name}".`);
    if (entry.shape.join() !== dims.join())
      throw new Error(`"${name}" is [${entry.shape.join()}], expected [${dims.join()}].`);
    const [first] = entry.data_offsets;
    return Float32Array.from({ length: sizeOf(dims) }, (_, i) => file.readFloatLE(dataAt + first + i * 4));
  };
};

/** Small random weights from a fixed seed: they say nothing, but go through every part of the machinery. */
export const randomWeights = (seed: number): Weights => {
  let state = seed;
  const next = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) | 0;
    return state / 2 ** 31;
  };
  return (name, dims) => {
    const scale = name.endsWith("layer_norm.weight") ? 0 : 1 / Math.sqrt(dims.at(-1) ?? 1);
    const centre = name.endsWith("layer_norm.weight") ? 1 : 0;
    return Float32Array.from({ length: sizeOf(dims) }, () => centre + scale * next());
  };
};
