import { z } from "zod";

/** The sizes of a Whisper-architecture model. */
export const modelShapeSchema = z.object({
  width: z.number().int().positive(),
  heads: z.number().int().positive(),
  encoder_layers: z.number().int().positive(),
  decoder_layers: z.number().int().positive(),
  mels: z.number().int().positive(),
  /** Encoder steps in one window, 50 a second. */
  frames: z.number().int().positive(),
  /** The most tokens of a prompt and its text together. */
  context: z.number().int().positive(),
  vocabulary: z.number().int().positive(),
});
export type ModelShape = z.infer<typeof modelShapeSchema>;

/** Hands out a weight by name, row by row; linear layers as [out, in]. */
export type Weights = (name: string, dims: readonly number[]) => Float32Array;

/** Whole numbers of 8 bits make a file a quarter of the size; floats are the reference. */
export type Precision = "int8" | "fp32";
