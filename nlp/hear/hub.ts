import { z } from "zod";

/** The models that can be fetched: English only, int8, in the layout that the recogniser loads. */
export const HUB_MODELS = {
  tiny: { repo: "Xenova/whisper-tiny.en", megabytes: 43 },
  base: { repo: "Xenova/whisper-base.en", megabytes: 79 },
  small: { repo: "Xenova/whisper-small.en", megabytes: 251 },
} as const;
export type HubModel = keyof typeof HUB_MODELS;
export const HUB = "https://huggingface.co";
const REVISION = "main";

/** What the recogniser needs of a model's files. */
const WANTED = [
  "config.json",
  "generation_config.json",
  "preprocessor_config.json",
  "tokenizer.json",
  "tokenizer_config.json",
  "onnx/encoder_model_quantized.onnx",
  "onnx/decoder_model_merged_quantized.onnx",
];

/** The hub's listing: large files carry their SHA-256, small ones the hash that Git gives them. */
const listingSchema = z.array(
  z.object({
    type: z.string(),
    path: z.string(),
    size: z.number().int().nonnegative(),
    oid: z.string(),
    lfs: z.object({ oid: z.string(), size: z.number().int() }).optional(),
  }),
);

export type FileHash = { readonly kind: "sha256" | "git"; readonly hex: string };
export type HubFile = {
  readonly path: string;
  readonly bytes: number;
  readonly hash: FileHash;
  readonly url: string;
};

const fileOf =
  (host: string, repo: string) =>
  ({ path, size, oid, lfs }: z.infer<typeof listingSchema>[number]): HubFile => ({
    path,
    bytes: lfs?.size ?? size,
    hash: lfs ? { kind: "sha256", hex: lfs.oid.replace(/^sha256:/, "") } : { kind: "git", hex: oid },
    url: `${host}/${repo}/resolve/${REVISION}/${path}`,
  });

/** The files of a model as the hub lists them now. Throws when the hub cannot be reached or lacks one. */
export const listHubFiles = async (host: string, model: HubModel): Promise<HubFile[]> => {
  const { repo } = HUB_MODELS[model];
  const response = await fetch(`${host}/api/models/${repo}/tree/${REVISION}?recursive=true`).catch(() => {
    throw new Error("The hub cannot be reached.");
  });
  if (!response.ok) throw new Error(`The hub answered ${response.status} when asked for its list of files.`);
  const files = listingSchema.parse(await response.json()).map(fileOf(host, repo));
  return WANTED.map((path) => {
    const file = files.find((listed) => listed.path === path);
    if (file === undefined) throw new Error(`The hub's list has no ${path}.`);
    return file;
  });
};
