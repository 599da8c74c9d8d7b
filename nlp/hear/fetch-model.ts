import { createHash } from "node:crypto";
import { mkdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fetchFile } from "./fetch-file.ts";
import { HUB, type HubFile, type HubModel, listHubFiles } from "./hub.ts";
import { checkModel, MANIFEST, type Manifest } from "./model-folder.ts";

export type FetchProgress = {
  readonly path: string;
  readonly doneBytes: number;
  readonly totalBytes: number;
};
export type FetchSetup = {
  readonly model: HubModel;
  /** The folder that holds models, one folder each. */
  readonly into: string;
  /** Another server with the same layout, for tests and mirrors. */
  readonly host?: string;
  readonly onProgress?: (progress: FetchProgress) => void;
};

const manifestOf = async (dir: string, name: string, files: readonly HubFile[]): Promise<Manifest> => ({
  name,
  files: await Promise.all(
    files.map(async ({ path, bytes }) => {
      const sha256 = createHash("sha256")
        .update(await readFile(join(dir, path)))
        .digest("hex");
      return { path, bytes, sha256 };
    }),
  ),
});

/** Fetches a model and puts it in its place when all of it is there and checked; a broken try goes on next time. Gives its folder. */
export const fetchModel = async ({ model, into, host = HUB, onProgress }: FetchSetup): Promise<string> => {
  const growing = join(into, `.${model}`);
  const place = join(into, model);
  if ((await checkModel(place, true)).tag === "whole") return place;
  const files = await listHubFiles(host, model);
  const totalBytes = files.reduce((sum, { bytes }) => sum + bytes, 0);
  let before = 0;
  for (const file of files) {
    const tell = (bytes: number): void =>
      onProgress?.({ path: file.path, doneBytes: before + bytes, totalBytes });
    await fetchFile(file, join(growing, file.path), tell);
    before += file.bytes;
  }
  await writeFile(
    join(growing, MANIFEST),
    JSON.stringify(await manifestOf(growing, `${model}, English`, files)),
  );
  await mkdir(dirname(place), { recursive: true });
  await rm(place, { recursive: true, force: true });
  await rename(growing, place);
  return place;
};
