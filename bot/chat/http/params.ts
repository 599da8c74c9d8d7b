import type { IncomingMessage } from "node:http";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { Busboy } from "@fastify/busboy";
import { z } from "zod";
import type { Upload } from "../file-shelf.ts";
import { MAX_FILE_BYTES } from "../media.ts";
import { badRequest, Refusal } from "../refusal.ts";
import { readBody, readJson } from "./body.ts";

export type Params = { readonly params: Record<string, unknown>; readonly uploads: Map<string, Upload> };

const MAX_FIELDS_BYTES = 1024 * 1024;

const objectSchema = z.record(z.string(), z.unknown());

const fromJson = async (request: IncomingMessage): Promise<Record<string, unknown>> => {
  const parsed = objectSchema.safeParse(await readJson(request, MAX_FIELDS_BYTES));
  if (!parsed.success) throw badRequest("object expected");
  return parsed.data;
};

const fromForm = async (request: IncomingMessage) =>
  Object.fromEntries(new URLSearchParams((await readBody(request, MAX_FIELDS_BYTES)).toString("utf8")));

const fromMultipart = async (request: IncomingMessage, type: string): Promise<Params> => {
  const result: Params = { params: {}, uploads: new Map() };
  const body = await readBody(request, MAX_FILE_BYTES + MAX_FIELDS_BYTES);
  const parser = new Busboy({ headers: { "content-type": type } });
  parser.on("field", (name, value) => void Object.assign(result.params, { [name]: value }));
  parser.on("file", (field, stream, name, _encoding, mime) => {
    const chunks: Buffer[] = [];
    stream.on("data", (chunk: Buffer) => void chunks.push(chunk));
    stream.on("end", () => void result.uploads.set(field, { bytes: Buffer.concat(chunks), name, mime }));
  });
  await pipeline(Readable.from([body]), parser);
  return result;
};

const ofBody = async (request: IncomingMessage): Promise<Params> => {
  const type = request.headers["content-type"] ?? "";
  const uploads = new Map<string, Upload>();
  if (type.startsWith("application/json")) return { params: await fromJson(request), uploads };
  if (type.startsWith("application/x-www-form-urlencoded"))
    return { params: await fromForm(request), uploads };
  if (!type.startsWith("multipart/form-data")) {
    await readBody(request, MAX_FIELDS_BYTES);
    return { params: {}, uploads };
  }
  try {
    return await fromMultipart(request, type);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw badRequest("malformed multipart/form-data");
  }
};

/** The parameters of a Bot API request, from its query string and its body in any of the forms the API takes. */
export const readParams = async (request: IncomingMessage, url: URL): Promise<Params> => {
  const query = Object.fromEntries(url.searchParams);
  if (request.method === "GET") return { params: query, uploads: new Map() };
  const body = await ofBody(request);
  return { params: { ...query, ...body.params }, uploads: body.uploads };
};
