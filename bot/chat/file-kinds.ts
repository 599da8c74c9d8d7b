import { extname } from "node:path";
import { tameLine } from "./tame.ts";

/** Where a file lies on the shelf, by how it was sent. */
export type Shelf = "photos" | "documents" | "voice" | "audio";

const MIME_BY_ENDING: Readonly<Record<string, string>> = {
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".jpeg": "image/jpeg",
  ".webp": "image/webp",
  ".gif": "image/gif",
  ".ogg": "audio/ogg",
  ".oga": "audio/ogg",
  ".opus": "audio/ogg",
  ".webm": "audio/webm",
  ".m4a": "audio/mp4",
  ".aac": "audio/aac",
  ".mp3": "audio/mpeg",
  ".wav": "audio/wav",
  ".flac": "audio/flac",
  ".pdf": "application/pdf",
  ".html": "text/html",
  ".csv": "text/csv",
  ".json": "application/json",
  ".ics": "text/calendar",
  ".txt": "text/plain",
  ".zip": "application/zip",
};

const UNKNOWN = "application/octet-stream";

/** Types that a page may show by itself; everything else is only ever downloaded. */
const SHOWN = /^(image\/(png|jpeg|webp|gif)|audio\/[\w.+-]{1,40})$/;

export const isShown = (mime: string): boolean => SHOWN.test(mime);

/** The type without its parameters, lower case; by the name's ending when the given one says nothing. */
export const mimeOf = (name: string, given: string | undefined): string => {
  const plain = (given ?? "").split(";", 1)[0]?.trim().toLowerCase() ?? "";
  if (/^[a-z]+\/[\w.+-]{1,80}$/.test(plain) && plain !== UNKNOWN) return plain;
  return MIME_BY_ENDING[extname(name).toLowerCase()] ?? UNKNOWN;
};

/** The ending for a file's name on disk: the name's own when it is tame, else one that fits the type. */
export const endingOf = (name: string, mime: string): string => {
  const own = extname(name).toLowerCase();
  if (/^\.[a-z0-9]{1,8}$/.test(own)) return own;
  return Object.entries(MIME_BY_ENDING).find(([, each]) => each === mime)?.[0] ?? ".bin";
};

/** A name that is safe to show and to save under: no path, no control characters, at most 120 characters. */
export const tameName = (name: string): string => {
  const base = (name.split(/[/\\]/).at(-1) ?? "").replace(/["<>|:*?]/g, "");
  const ending = extname(base).slice(0, 12);
  return tameLine(base.slice(0, base.length - ending.length), 120 - ending.length) + ending || "file";
};
