import { createHash } from "node:crypto";
import { createReadStream, createWriteStream } from "node:fs";
import { mkdir, rename, rm, stat } from "node:fs/promises";
import { dirname } from "node:path";
import { Readable, Transform } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { FileHash, HubFile } from "./hub.ts";

/** Bytes of a file that are there now. */
export type Tell = (bytes: number) => void;

const bytesOf = (path: string): Promise<number> =>
  stat(path).then(
    ({ size }) => size,
    () => 0,
  );

/** Git hashes a file behind a header of its kind and length. */
const hashOf = async (path: string, { kind }: FileHash): Promise<string> => {
  const hash = createHash(kind === "sha256" ? "sha256" : "sha1");
  if (kind === "git") hash.update(`blob ${await bytesOf(path)}\0`);
  for await (const part of createReadStream(path)) hash.update(part as Buffer);
  return hash.digest("hex");
};

const isRight = async (path: string, file: HubFile): Promise<boolean> =>
  (await bytesOf(path)) === file.bytes && (await hashOf(path, file.hash)) === file.hash.hex;

const counting = (from: number, tell: Tell): Transform => {
  let bytes = from;
  return new Transform({
    transform: (part: Buffer, _, done) => {
      bytes += part.length;
      tell(bytes);
      done(null, part);
    },
  });
};

const LONGEST_MS = 3_600_000;

/** The rest of a file from where an earlier try ended; from the start when the server will not go on from there. */
const download = async (file: HubFile, part: string, tell: Tell): Promise<void> => {
  const from = await bytesOf(part);
  const headers = from > 0 ? { range: `bytes=${from}-` } : {};
  const response = await fetch(file.url, { headers, signal: AbortSignal.timeout(LONGEST_MS) });
  if (!response.ok || response.body === null)
    throw new Error(`The hub answered ${response.status} for ${file.path}.`);
  const goesOn = response.status === 206;
  const body = Readable.fromWeb(response.body);
  await pipeline(
    body,
    counting(goesOn ? from : 0, tell),
    createWriteStream(part, { flags: goesOn ? "a" : "w" }),
  );
};

/** Fetches one file into its place, going on where an earlier try ended; nothing unchecked ever stands there. */
export const fetchFile = async (file: HubFile, path: string, tell: Tell): Promise<void> => {
  if (await isRight(path, file)) {
    tell(file.bytes);
    return;
  }
  const part = `${path}.part`;
  await mkdir(dirname(path), { recursive: true });
  if ((await bytesOf(part)) >= file.bytes) await rm(part, { force: true });
  await download(file, part, tell);
  if (!(await isRight(part, file))) {
    await rm(part, { force: true });
    throw new Error(`${file.path} did not arrive as it left. Try again.`);
  }
  await rename(part, path);
};
