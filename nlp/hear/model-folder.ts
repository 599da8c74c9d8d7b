import { createHash } from "node:crypto";
import { readFile, stat } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";

const manifestSchema = z.object({
  name: z.string(),
  files: z.array(z.object({ path: z.string(), bytes: z.number().int(), sha256: z.string() })),
});
export type Manifest = z.infer<typeof manifestSchema>;
export const MANIFEST = "manifest.json";

/** What the recogniser cannot do without; the ONNX files may be whole numbers ("_quantized") or floats. */
const NEEDED = ["config", "generation_config", "preprocessor_config", "tokenizer", "tokenizer_config"];
const GRAPHS = ["onnx/encoder_model", "onnx/decoder_model_merged"];

export type ModelCheck =
  | { readonly tag: "whole"; readonly name: string | null }
  | { readonly tag: "no-folder" }
  | { readonly tag: "missing"; readonly files: readonly string[] }
  | { readonly tag: "damaged"; readonly files: readonly string[] };

const bytesOf = (path: string): Promise<number | undefined> =>
  stat(path).then(
    ({ size }) => size,
    () => undefined,
  );

const readManifest = async (dir: string): Promise<Manifest | undefined> => {
  try {
    return manifestSchema.parse(JSON.parse(await readFile(join(dir, MANIFEST), "utf8")));
  } catch {
    return undefined;
  }
};

const isThere = async (dir: string, names: readonly string[]): Promise<boolean> =>
  (await Promise.all(names.map((name) => bytesOf(join(dir, name))))).some((bytes) => (bytes ?? 0) > 0);

const missing = async (dir: string): Promise<string[]> => {
  const wanted = [
    ...NEEDED.map((name) => [`${name}.json`]),
    ...GRAPHS.map((name) => [`${name}_quantized.onnx`, `${name}.onnx`]),
  ];
  const absent = await Promise.all(
    wanted.map(async (names) => ((await isThere(dir, names)) ? [] : names.slice(0, 1))),
  );
  return absent.flat();
};

const isAsListed = async (
  dir: string,
  file: Manifest["files"][number],
  thorough: boolean,
): Promise<boolean> => {
  if ((await bytesOf(join(dir, file.path))) !== file.bytes) return false;
  if (!thorough) return true;
  return (
    createHash("sha256")
      .update(await readFile(join(dir, file.path)))
      .digest("hex") === file.sha256
  );
};

/** Whether a folder holds a whole model. With a manifest, sizes are compared; `thorough` compares SHA-256 as well. */
export const checkModel = async (dir: string, thorough = false): Promise<ModelCheck> => {
  if ((await bytesOf(dir)) === undefined) return { tag: "no-folder" };
  const absent = await missing(dir);
  if (absent.length > 0) return { tag: "missing", files: absent };
  const manifest = await readManifest(dir);
  const files = manifest?.files ?? [];
  const right = await Promise.all(files.map((file) => isAsListed(dir, file, thorough)));
  const damaged = files.filter((_, i) => right[i] !== true).map(({ path }) => path);
  return damaged.length > 0
    ? { tag: "damaged", files: damaged }
    : { tag: "whole", name: manifest?.name ?? null };
};
