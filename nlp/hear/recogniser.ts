import { existsSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { AutoProcessor, AutoTokenizer, env, WhisperForConditionalGeneration } from "@xenova/transformers";
import { withoutLoops } from "./loops.ts";
import { PROMPT_WORDS } from "./prompt-words.ts";
import { SAMPLE_RATE } from "./sound.ts";

/** A speech model held in memory. Listening blocks the process it is in. */
export type Recogniser = {
  /** The longest stretch that it takes at once. */
  readonly windowSeconds: number;
  readonly transcribe: (samples: Float32Array, words: readonly string[]) => Promise<string>;
};

const TOKENS_PER_SECOND = 9;
const SPARE_TOKENS = 12;
/** The models of the hub have some 51,864 tokens and were taught to read a prompt as earlier text. */
const HUB_VOCABULARY = 50_000;
const MOST_PROMPT_TOKENS = 120;

type Model = Awaited<ReturnType<typeof WhisperForConditionalGeneration.from_pretrained>>;
type Tokenizer = Awaited<ReturnType<typeof AutoTokenizer.from_pretrained>>;
type Loaded = { model: Model; tokenizer: Tokenizer; language: string };
type Features = Parameters<Model["generate"]>[0];
type Numbers = { readonly vocab_size: number; readonly max_target_positions: number };

const numbersOf = ({ model }: Loaded): Numbers => model.config as Numbers;
const idOf = ({ tokenizer }: Loaded, token: string): number | undefined =>
  (tokenizer.model.convert_tokens_to_ids([token]) as (number | undefined)[])[0];
const idsOf = (loaded: Loaded, tokens: readonly string[]): number[] =>
  tokens.map((token) => idOf(loaded, token)).filter((id) => id !== undefined);

const isMultilingual = (loaded: Loaded): boolean => {
  const { generation_config: made } = loaded.model as unknown as {
    generation_config?: { is_multilingual?: boolean };
  };
  return made?.is_multilingual ?? numbersOf(loaded).vocab_size === 51_865;
};

const beginning = (loaded: Loaded): number[] =>
  idsOf(loaded, [
    "<|startoftranscript|>",
    ...(isMultilingual(loaded) ? [`<|${loaded.language}|>`, "<|transcribe|>"] : []),
    "<|notimestamps|>",
  ]);

/** Only a model that was taught with prompts makes use of one; the small model does not. */
const promptText = (loaded: Loaded, words: readonly string[]): string =>
  numbersOf(loaded).vocab_size > HUB_VOCABULARY ? ` ${[...words, ...PROMPT_WORDS].join(", ")}.` : "";

/** Words that may come up, put before the text as if they had been said just now. */
const prompt = (loaded: Loaded, words: readonly string[]): number[] => {
  const most = Math.min(MOST_PROMPT_TOKENS, Math.floor(numbersOf(loaded).max_target_positions / 6));
  const text = promptText(loaded, words);
  if (text === "") return [];
  const ids = loaded.tokenizer.encode(text, null, { add_special_tokens: false });
  return [...idsOf(loaded, ["<|startofprev|>"]), ...ids.slice(0, most)];
};

const transcriber =
  (loaded: Loaded, features: (samples: Float32Array) => Promise<Features>) =>
  async (samples: Float32Array, words: readonly string[]): Promise<string> => {
    const given = [...prompt(loaded, words), ...beginning(loaded)];
    const room = numbersOf(loaded).max_target_positions - given.length - 1;
    const wanted = Math.ceil((samples.length / SAMPLE_RATE) * TOKENS_PER_SECOND) + SPARE_TOKENS;
    const options = {
      decoder_input_ids: given,
      forced_decoder_ids: null,
      max_new_tokens: Math.min(room, wanted),
    };
    const [written] = (await loaded.model.generate(await features(samples), options)) as number[][];
    const ids = (written ?? []).slice(given.length);
    if (ids.length === 0) return "";
    return withoutLoops(loaded.tokenizer.decode(ids, { skip_special_tokens: true }).trim());
  };

/** Loads a model folder from disk and nothing from anywhere else. Throws when the folder is not a whole model. */
export const loadRecogniser = async (dir: string, language: string): Promise<Recogniser> => {
  env.allowRemoteModels = false;
  env.localModelPath = dirname(dir);
  const name = basename(dir);
  const quantized = existsSync(join(dir, "onnx", "encoder_model_quantized.onnx"));
  const processor = await AutoProcessor.from_pretrained(name);
  const tokenizer = await AutoTokenizer.from_pretrained(name);
  const model = await WhisperForConditionalGeneration.from_pretrained(name, { quantized });
  const { config } = processor.feature_extractor as unknown as { config: { n_samples: number } };
  const features = async (samples: Float32Array): Promise<Features> =>
    ((await processor(samples)) as { input_features: Features }).input_features;
  return {
    windowSeconds: config.n_samples / SAMPLE_RATE,
    transcribe: transcriber({ model, tokenizer, language }, features),
  };
};
