import { readFile } from "node:fs/promises";
import { WhisperFeatureExtractor } from "@xenova/transformers";
import { InferenceSession, Tensor } from "onnxruntime-node";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { decoderGraph } from "../../../nlp/speech-model/decoder.ts";
import { encoderGraph } from "../../../nlp/speech-model/encoder.ts";
import type { Parts } from "../../../nlp/speech-model/layers.ts";
import { modelShapeSchema, type Precision } from "../../../nlp/speech-model/shape.ts";
import { weightsOf } from "../../../nlp/speech-model/weights.ts";

/** Computed by PyTorch with nlp/speech-model/reference.py: the training's own model and features. */
const reference = z
  .object({
    shape: modelShapeSchema,
    sound: z.array(z.number()),
    mel: z.array(z.number()),
    heard: z.array(z.number()),
    ids: z.array(z.number()),
    scores: z.array(z.number()),
  })
  .parse(JSON.parse(await readFile(new URL("reference.json", import.meta.url), "utf8")));
const weights = weightsOf(await readFile(new URL("reference.safetensors", import.meta.url)));
const { shape, ids } = reference;

const partsOf = (precision: Precision): Parts => ({ shape, weights, precision, words: precision });
const farthest = (some: ArrayLike<number>, others: ArrayLike<number>): number => {
  expect(some.length).toBe(others.length);
  return Array.from(some).reduce(
    (most, value, i) => Math.max(most, Math.abs(value - (others[i] ?? Number.NaN))),
    0,
  );
};
const dataOf = (tensor: Tensor | undefined): Float32Array => tensor?.data as Float32Array;

const encode = async (precision: Precision): Promise<Tensor> => {
  const session = await InferenceSession.create(encoderGraph(partsOf(precision)).model("encoder"));
  const mel = new Tensor("float32", Float32Array.from(reference.mel), [1, shape.mels, 2 * shape.frames]);
  const { last_hidden_state: heard } = await session.run({ input_features: mel });
  if (heard === undefined) throw new Error("The encoder gave nothing.");
  return heard;
};

type Results = Readonly<Record<string, Tensor>>;
/** Scores for the last of some ids: the first `together` at once, the others step by step with what was kept. */
const decode = async (precision: Precision, heard: Tensor, together: number): Promise<Float32Array> => {
  const session = await InferenceSession.create(decoderGraph(partsOf(precision)).model("decoder"));
  const kept = session.inputNames.filter((name) => name.startsWith("past_key_values"));
  const none = (): Tensor =>
    new Tensor("float32", new Float32Array(0), [1, shape.heads, 0, shape.width / shape.heads]);
  let past: Results | undefined;
  const step = async (some: readonly number[]): Promise<Results> => {
    const before = past;
    const results = await session.run({
      encoder_hidden_states: heard,
      input_ids: new Tensor("int64", BigInt64Array.from(some.map(BigInt)), [1, some.length]),
      use_cache_branch: new Tensor("bool", [before !== undefined], [1]),
      ...Object.fromEntries(kept.map((name) => [name, before?.[name] ?? none()])),
    });
    past = Object.fromEntries(
      kept.map((name) => [name, results[name.replace("past_key_values", "present")] ?? none()]),
    );
    return results;
  };
  let results = await step(ids.slice(0, together));
  for (const id of ids.slice(together)) results = await step([id]);
  return dataOf(results["logits"]).slice(-shape.vocabulary);
};

describe("the ONNX graphs compute what the training's model computes", () => {
  const last = reference.scores.slice(-shape.vocabulary);

  it("encoder", async () =>
    expect(farthest(dataOf(await encode("fp32")), reference.heard)).toBeLessThan(2e-5));

  it.each([1, 3, ids.length])("decoder, %i ids at once and the rest with a cache", async (together) => {
    expect(farthest(await decode("fp32", await encode("fp32"), together), last)).toBeLessThan(2e-5);
  });

  // Processors without instructions for 8-bit dot products saturate on the way (ONNX Runtime, "Quantize ONNX models",
  // on U8S8): under 0.05 of the largest score with them, 0.2 measured without.
  it("in whole numbers nearly so", async () => {
    const size = Math.max(...reference.scores.map(Math.abs));
    expect(farthest(await decode("int8", await encode("int8"), 3), last)).toBeLessThan(0.3 * size);
  });
});

// The sound is written to six decimals, which faint bands feel.
it("the recogniser's log-mel features are those of the training", async () => {
  const extractor = new WhisperFeatureExtractor({
    feature_size: shape.mels,
    hop_length: 160,
    n_fft: 400,
    n_samples: reference.sound.length,
    nb_max_frames: 2 * shape.frames,
    sampling_rate: 16_000,
  });
  const { input_features: mel } = (await extractor(Float32Array.from(reference.sound))) as {
    input_features: Tensor;
  };
  expect(farthest(dataOf(mel), reference.mel)).toBeLessThan(3e-4);
});
