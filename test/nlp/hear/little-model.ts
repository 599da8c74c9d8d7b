import { mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeModelFolder } from "../../../nlp/speech-model/folder.ts";
import type { ModelShape } from "../../../nlp/speech-model/shape.ts";
import { tableSize } from "../../../nlp/speech-model/tokenizer.ts";
import { randomWeights } from "../../../nlp/speech-model/weights.ts";

const TABLE = {
  merges: ["t h", "th e", "i n", "a n"],
  specials: ["<|endoftext|>", "<|startoftranscript|>", "<|startofprev|>", "<|nospeech|>", "<|notimestamps|>"],
};
const SHAPE: ModelShape = {
  width: 32,
  heads: 2,
  encoder_layers: 1,
  decoder_layers: 1,
  mels: 80,
  frames: 500,
  context: 96,
  vocabulary: tableSize(TABLE),
};

/** A model folder of a few hundred kB with random weights: it goes through everything and says nothing of meaning. */
export const littleModel = async (): Promise<string> => {
  const dir = join(await mkdtemp(join(tmpdir(), "model-")), "little");
  await writeModelFolder(
    dir,
    "random weights",
    { shape: SHAPE, weights: randomWeights(2009), precision: "int8", words: "int8" },
    TABLE,
  );
  return dir;
};
