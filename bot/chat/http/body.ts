import type { IncomingMessage } from "node:http";
import { Refusal } from "../refusal.ts";

const tooLarge = () => new Refusal(413, "Request Entity Too Large");

/** Reads a whole body. Throws 413 as soon as it is longer than `maxBytes`, 408 when nothing comes for `idleMs`. */
export const readBody = async (
  request: IncomingMessage,
  maxBytes: number,
  idleMs = 30_000,
): Promise<Buffer> => {
  if (Number(request.headers["content-length"] ?? 0) > maxBytes) throw tooLarge();
  const chunks: Buffer[] = [];
  let bytes = 0;
  request.setTimeout(idleMs, () => void request.destroy(new Refusal(408, "Request Timeout")));
  for await (const chunk of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
    bytes += chunk.byteLength;
    if (bytes > maxBytes) throw tooLarge();
    chunks.push(chunk);
  }
  request.setTimeout(0);
  return Buffer.concat(chunks);
};

/** Parses a JSON body. Throws 400. */
export const readJson = async (request: IncomingMessage, maxBytes: number): Promise<unknown> => {
  const body = await readBody(request, maxBytes);
  try {
    return JSON.parse(body.toString("utf8")) as unknown;
  } catch {
    throw new Refusal(400, "Bad Request: object expected");
  }
};
