import type { Audio, Document, Message, PhotoSize, Voice } from "grammy/types";
import { imageSize } from "image-size";
import type { FileRow } from "./chat-log.ts";
import type { Shelf } from "./file-kinds.ts";

export type MediaKind = "photo" | "document" | "voice" | "audio";

export const SHELF_OF: Readonly<Record<MediaKind, Shelf>> = {
  photo: "photos",
  document: "documents",
  voice: "voice",
  audio: "audio",
};

/** Largest file in either direction, in bytes. */
export const MAX_FILE_BYTES = 20 * 1024 * 1024;

/** Width and height in pixels. */
export type Size = { readonly width: number; readonly height: number };

/** Undefined when the bytes are no picture. */
export const sizeOfPicture = (bytes: Uint8Array): Size | undefined => {
  try {
    const { width, height } = imageSize(bytes);
    return { width, height };
  } catch {
    return undefined;
  }
};

const common = (file: FileRow) => ({
  file_id: file.id,
  file_unique_id: file.id.slice(0, 12),
  file_size: file.size,
});

type Described = { readonly file: FileRow; readonly durationSeconds: number };

const photo = (file: FileRow, size: Size): PhotoSize[] => [{ ...common(file), ...size }];

const document = (file: FileRow): Document => ({
  ...common(file),
  file_name: file.name,
  mime_type: file.mime,
});

const voice = ({ file, durationSeconds }: Described): Voice => ({
  ...common(file),
  duration: durationSeconds,
  mime_type: file.mime,
});

const audio = ({ file, durationSeconds }: Described): Audio => ({
  ...voice({ file, durationSeconds }),
  file_name: file.name,
});

export type MediaFields = Pick<Message, "photo" | "document" | "voice" | "audio">;

/** The field of a message that carries a file. `durationSeconds` counts for voice and audio, `size` for photos. */
export const mediaFields = (
  kind: MediaKind,
  file: FileRow,
  about: { durationSeconds?: number | undefined; size?: Size | undefined },
): MediaFields => {
  const described = { file, durationSeconds: about.durationSeconds ?? 0 };
  switch (kind) {
    case "photo":
      return { photo: photo(file, about.size ?? { width: 0, height: 0 }) };
    case "document":
      return { document: document(file) };
    case "voice":
      return { voice: voice(described) };
    case "audio":
      return { audio: audio(described) };
  }
};
