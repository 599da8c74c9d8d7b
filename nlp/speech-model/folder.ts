import { createHash } from "node:crypto";
import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { decoderGraph } from "./decoder.ts";
import { encoderGraph } from "./encoder.ts";
import type { Parts } from "./layers.ts";
import type { ModelShape } from "./shape.ts";
import { type TokenTable, tokenIds, tokenizerFile } from "./tokenizer.ts";

const HOP = 160;
const RATE = 16_000;
const EOT = "<|endoftext|>";

const configFile = (shape: ModelShape, table: TokenTable): object => {
  const ids = tokenIds(table);
  return {
    model_type: "whisper",
    architectures: ["WhisperForConditionalGeneration"],
    is_encoder_decoder: true,
    d_model: shape.width,
    encoder_layers: shape.encoder_layers,
    decoder_layers: shape.decoder_layers,
    encoder_attention_heads: shape.heads,
    decoder_attention_heads: shape.heads,
    num_mel_bins: shape.mels,
    max_source_positions: shape.frames,
    max_target_positions: shape.context,
    vocab_size: shape.vocabulary,
    decoder_start_token_id: ids.start,
    bos_token_id: ids.end,
    eos_token_id: ids.end,
    pad_token_id: ids.end,
    scale_embedding: false,
    activation_function: "gelu",
    use_cache: true,
  };
};

const generationFile = (shape: ModelShape, table: TokenTable): object => {
  const ids = tokenIds(table);
  return {
    decoder_start_token_id: ids.start,
    bos_token_id: ids.end,
    eos_token_id: ids.end,
    pad_token_id: ids.end,
    forced_decoder_ids: [[1, ids.plain]],
    no_timestamps_token_id: ids.plain,
    is_multilingual: false,
    max_length: shape.context,
    return_timestamps: false,
  };
};

const preprocessorFile = ({ mels, frames }: ModelShape): object => ({
  feature_extractor_type: "WhisperFeatureExtractor",
  processor_class: "WhisperProcessor",
  feature_size: mels,
  chunk_length: (2 * frames * HOP) / RATE,
  hop_length: HOP,
  n_fft: 400,
  n_samples: 2 * frames * HOP,
  nb_max_frames: 2 * frames,
  padding_side: "right",
  padding_value: 0,
  return_attention_mask: false,
  sampling_rate: RATE,
});

const tokenizerConfigFile = {
  tokenizer_class: "WhisperTokenizer",
  add_prefix_space: false,
  bos_token: EOT,
  eos_token: EOT,
  unk_token: EOT,
  pad_token: EOT,
  model_max_length: 1024,
  clean_up_tokenization_spaces: false,
};

const asJson = (value: object): Buffer => Buffer.from(`${JSON.stringify(value)}\n`);

/** Every file of a model folder as @xenova/transformers loads it, by its path in the folder. */
export const modelFiles = (parts: Parts, table: TokenTable): Map<string, Uint8Array> => {
  const suffix = parts.precision === "int8" ? "_quantized" : "";
  return new Map([
    ["config.json", asJson(configFile(parts.shape, table))],
    ["generation_config.json", asJson(generationFile(parts.shape, table))],
    ["preprocessor_config.json", asJson(preprocessorFile(parts.shape))],
    ["tokenizer.json", asJson(tokenizerFile(table))],
    ["tokenizer_config.json", asJson(tokenizerConfigFile)],
    [`onnx/encoder_model${suffix}.onnx`, encoderGraph(parts).model("encoder")],
    [`onnx/decoder_model_merged${suffix}.onnx`, decoderGraph(parts).model("decoder")],
  ]);
};

/** Writes the folder, and beside the files their sizes and SHA-256 as `manifest.json`. */
export const writeModelFolder = async (
  dir: string,
  name: string,
  parts: Parts,
  table: TokenTable,
): Promise<void> => {
  await mkdir(join(dir, "onnx"), { recursive: true });
  const files = modelFiles(parts, table);
  for (const [path, bytes] of files) await writeFile(join(dir, path), bytes);
  const listed = [...files].map(([path, bytes]) => ({
    path,
    bytes: bytes.length,
    sha256: createHash("sha256").update(bytes).digest("hex"),
  }));
  await writeFile(join(dir, "manifest.json"), `${JSON.stringify({ name, files: listed }, null, 1)}\n`);
};
