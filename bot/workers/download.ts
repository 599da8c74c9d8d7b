import { createWriteStream } from "node:fs";
import { rename, rm } from "node:fs/promises";
import { Readable, Transform } from "node:stream";
import { pipeline } from "node:stream/promises";

export type Download =
  | { readonly is: "kept"; readonly bytes: number }
  | { readonly is: "failed"; readonly why: "no-connection" | "refused" | "cut-short" | "too-large" };

const LIMIT_BYTES = 20 * 1024 * 1024;
const LIMIT_MS = 120_000;

class TooLarge extends Error {}

const counter = (limit: number) => {
  let bytes = 0;
  const stream = new Transform({
    transform(chunk: Buffer, _encoding, done) {
      bytes += chunk.length;
      done(bytes > limit ? new TooLarge() : null, chunk);
    },
  });
  return { stream, bytes: () => bytes };
};

/**
 * Fetches a file to `path`: checks the status, counts the bytes, gives up after a while, and only gives the file its
 * name when it is whole.
 */
export const download = async (
  url: string,
  path: string,
  expectedBytes: number | null,
  fetcher = fetch,
): Promise<Download> => {
  const partial = `${path}.partial`;
  const count = counter(LIMIT_BYTES);
  try {
    const response = await fetcher(url, { signal: AbortSignal.timeout(LIMIT_MS) });
    if (!response.ok || response.body === null)
      return { is: "failed", why: response.status >= 500 ? "no-connection" : "refused" };
    await pipeline(
      Readable.fromWeb(response.body as never),
      count.stream,
      createWriteStream(partial, { mode: 0o600 }),
    );
    if (expectedBytes !== null && count.bytes() !== expectedBytes) {
      await rm(partial, { force: true });
      return { is: "failed", why: "cut-short" };
    }
    await rename(partial, path);
    return { is: "kept", bytes: count.bytes() };
  } catch (error) {
    await rm(partial, { force: true });
    return { is: "failed", why: error instanceof TooLarge ? "too-large" : "no-connection" };
  }
};
