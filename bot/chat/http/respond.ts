import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import type { IncomingMessage, ServerResponse } from "node:http";
import { pipeline } from "node:stream/promises";
import { Refusal } from "../refusal.ts";

/** Headers that every answer carries. */
export const SAFE_HEADERS = {
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "cross-origin-resource-policy": "same-origin",
  "cross-origin-opener-policy": "same-origin",
  "x-frame-options": "DENY",
} as const;

export const sendJson = (response: ServerResponse, status: number, body: unknown): void => {
  if (response.headersSent || response.destroyed) return;
  const bytes = Buffer.from(JSON.stringify(body));
  response.writeHead(status, {
    "content-type": "application/json; charset=utf-8",
    "content-length": bytes.byteLength,
    "cache-control": "no-store",
  });
  response.end(bytes);
};

const HANGUPS = new Set(["ECONNRESET", "EPIPE", "ERR_STREAM_PREMATURE_CLOSE", "ABORT_ERR"]);

/** True when an error only says that the other side went away. */
export const isHangup = (error: unknown): boolean =>
  error instanceof Error && "code" in error && HANGUPS.has(String(error.code));

type Range = { readonly start: number; readonly end: number };

/** The one range of bytes that a Range header asks for; undefined when it asks for everything or for nothing sane. */
export const rangeOf = (header: string | undefined, size: number): Range | undefined => {
  const [, from = "", to = ""] = /^bytes=(\d{0,15})-(\d{0,15})$/.exec(header ?? "") ?? [];
  if (from === "" && to === "") return undefined;
  const start = from === "" ? Math.max(size - Number(to), 0) : Number(from);
  const end = from === "" || to === "" ? size - 1 : Math.min(Number(to), size - 1);
  return start <= end ? { start, end } : undefined;
};

/** Streams a file, or the range of it that was asked for. Throws 404 when it is gone. */
export const sendFile = async (
  request: IncomingMessage,
  response: ServerResponse,
  path: string,
  headers: Readonly<Record<string, string>>,
): Promise<void> => {
  const size = await stat(path).then(
    (found) => found.size,
    () => undefined,
  );
  if (size === undefined) throw new Refusal(404, "Not Found");
  const range = rangeOf(request.headers.range, size);
  const { start, end } = range ?? { start: 0, end: size - 1 };
  response.writeHead(range ? 206 : 200, {
    ...headers,
    "accept-ranges": "bytes",
    "content-length": Math.max(end - start + 1, 0),
    ...(range && { "content-range": `bytes ${start}-${end}/${size}` }),
  });
  if (size === 0) return void response.end();
  await pipeline(createReadStream(path, { start, end }), response);
};
