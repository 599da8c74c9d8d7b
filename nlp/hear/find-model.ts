import { readdir, stat } from "node:fs/promises";
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

/** The folders of fetched models, the latest first. */
const fetchedFolders = async (fetched: string): Promise<string[]> => {
  const names = (await readdir(fetched).catch(() => [])).filter((name) => !name.startsWith("."));
  const dated = await Promise.all(
    names.map(async (name) => ({
      dir: join(fetched, name),
      when: (await stat(join(fetched, name))).mtimeMs,
    })),
  );
  return dated.sort((a, b) => b.when - a.when).map(({ dir }) => dir);
};

type Candidate = { readonly dir: string; readonly kind: FoundModel["kind"] };
const candidates = async ({ given, fetched, sample }: Places): Promise<Candidate[]> => {
  if (given !== null) return [{ dir: given, kind: "given" }];
  const kept = (await fetchedFolders(fetched)).map((dir): Candidate => ({ dir, kind: "fetched" }));
  return sample ? [...kept, { dir: SAMPLE_MODEL, kind: "sample" }] : kept;
};

/** The first whole model: the folder given, else the one fetched last, else the sample where that is allowed. */
export const findModel = async (places: Places): Promise<FoundModel | NoModel> => {
  const broken: { dir: string; check: ModelCheck }[] = [];
  for (const { dir, kind } of await candidates(places)) {
    const check = await checkModel(dir);
    if (check.tag === "whole") return { tag: "model", dir, kind, name: check.name };
    broken.push({ dir, check });
  }
  return { tag: "no-model", broken };
};
