import { readFile } from "node:fs/promises";
import type { Message } from "grammy/types";
import { z } from "zod";
import type { FileRow } from "../chat-log.ts";
import type { Upload } from "../file-shelf.ts";
import { MAX_FILE_BYTES, type MediaKind, mediaFields, SHELF_OF, type Size, sizeOfPicture } from "../media.ts";
import { badRequest, Refusal } from "../refusal.ts";
import { type Call, looseInteger, type Method, method, type Office } from "./method.ts";
import { alreadySent, personAt, post, posting } from "./posting.ts";
import { captionFields, entities, noParseMode, textFields } from "./words.ts";

export const sendMessage = method(
  z.object({ ...posting, text: z.string().optional(), entities, parse_mode: noParseMode }),
  (office, params) =>
    alreadySent(office, params) ?? post(office, params, textFields(params.text, params.entities)),
);

const ATTACHED = "attach://";

const uploadOf = (name: string, value: unknown, { uploads }: Call): Upload | undefined =>
  typeof value === "string" && value.startsWith(ATTACHED)
    ? uploads.get(value.slice(ATTACHED.length))
    : uploads.get(name);

type Held = { readonly file: FileRow; readonly size: Size | undefined };

const pictureSize = (bytes: Uint8Array): Size => {
  const size = sizeOfPicture(bytes);
  if (!size) throw badRequest("IMAGE_PROCESS_FAILED");
  return size;
};

const store = async (office: Office, kind: MediaKind, upload: Upload): Promise<Held> => {
  if (upload.bytes.byteLength === 0) throw badRequest("file must be non-empty");
  if (upload.bytes.byteLength > MAX_FILE_BYTES) throw new Refusal(413, "Request Entity Too Large");
  const size = kind === "photo" ? pictureSize(upload.bytes) : undefined;
  return { file: await office.shelf.put(SHELF_OF[kind], upload), size };
};

const recall = async (office: Office, kind: MediaKind, value: unknown): Promise<Held> => {
  const file = typeof value === "string" ? office.shelf.get(value) : undefined;
  if (!file) throw badRequest("wrong file identifier/HTTP URL specified");
  return {
    file,
    size: kind === "photo" ? pictureSize(await readFile(office.shelf.locate(file))) : undefined,
  };
};

const fileParams = z.object({
  ...posting,
  caption: z.string().optional(),
  caption_entities: entities,
  parse_mode: noParseMode,
  duration: looseInteger.optional(),
});

/** Sends a file that comes with the request, or one that is known by its id. */
const sendFile = (kind: MediaKind): Method =>
  method(fileParams, async (office, params, call): Promise<Message> => {
    const done = alreadySent(office, params);
    if (done) return done;
    personAt(office, params.chat_id);
    const words = captionFields(params.caption, params.caption_entities);
    const value = call.params[kind];
    const upload = uploadOf(kind, value, call);
    const { file, size } = await (upload ? store(office, kind, upload) : recall(office, kind, value));
    const media = mediaFields(kind, file, { durationSeconds: params.duration, size });
    return post(office, params, { ...media, ...words });
  });

export const sendPhoto = sendFile("photo");
export const sendDocument = sendFile("document");
export const sendVoice = sendFile("voice");
export const sendAudio = sendFile("audio");
