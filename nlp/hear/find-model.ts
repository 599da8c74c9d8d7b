import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { checkModel, type ModelCheck } from "./model-folder.ts";

/** `sample` is the small model for trying out with synthetic voices; it is of no use for people. */
export type FoundModel = {
  readonly tag: "model";
  readonly dir: string;
  readonly kind: "given" | "fetched" | "sample";
  readonly name: string | null;
};
export type NoModel = {
  readonly tag: "no-model";
  /** Folders that were looked at and are not whole. */
  readonly broken: readonly { readonly dir: string; readonly check: ModelCheck }[];
};

export type Places = {
  /** The folder that the owner named, if any: it is then the only one that counts. */
  readonly given: string | null;
  /** Where `npm run model` puts models, one folder each. */
  readonly fetched: string;
  /** Fall back on the small model that comes along. */
  readonly sample: boolean;
};

export const SAMPLE_MODEL = fileURLToPath(new URL("../../samples/speech-model", import.meta.url));

type Candidate = { readonly dir: string; readonly kind: FoundModel["kind"] };
const candidates = async ({ given, fetched, sample }: Places): Promise<Candidate[]> => {
  if (given !== null) return [{ dir: given, kind: "given" }];
  const names = await readdir(fetched).catch(() => []);
  const kept = names
    .filter((name) => !name.startsWith("."))
    .map((name) => ({ dir: join(fetched, name), kind: "fetched" as const }));
  return [...kept, ...(sample ? [{ dir: SAMPLE_MODEL, kind: "sample" as const }] : [])];
};

/** The first whole model: the folder given, else the one fetched, else the sample where that is allowed. */
export const findModel = async (places: Places): Promise<FoundModel | NoModel> => {
  const broken: { dir: string; check: ModelCheck }[] = [];
  for (const { dir, kind } of await candidates(places)) {
    const check = await checkModel(dir);
    if (check.tag === "whole") return { tag: "model", dir, kind, name: check.name };
    broken.push({ dir, check });
  }
  return { tag: "no-model", broken };
};
