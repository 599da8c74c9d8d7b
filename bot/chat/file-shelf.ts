import { randomBytes } from "node:crypto";
import { mkdir, open, rename, rm } from "node:fs/promises";
import { basename, join } from "node:path";
import type { ChatLog, FileRow } from "./chat-log.ts";
import { endingOf, mimeOf, type Shelf, tameName } from "./file-kinds.ts";

/** A file as it came in. */
export type Upload = {
  readonly bytes: Uint8Array;
  readonly name: string;
  readonly mime?: string | undefined;
};

export type FileShelf = {
  /** Keeps a file for good: its bytes are on disk and its row in the log when this resolves. */
  put(shelf: Shelf, upload: Upload): Promise<FileRow>;
  get(id: string): FileRow | undefined;
  /** The row behind a path that `getFile` gave; undefined for any other path. */
  byPath(path: string): FileRow | undefined;
  /** Where the bytes lie on this machine. */
  locate(file: FileRow): string;
};

const writeWhole = async (target: string, bytes: Uint8Array): Promise<void> => {
  const temporary = `${target}.part`;
  try {
    const handle = await open(temporary, "w", 0o600);
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(temporary, target);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
};

/** Files of the chat in a folder, one subfolder a kind, under names that nobody can guess. */
export const createFileShelf = (log: ChatLog, folder: string): FileShelf => {
  const put: FileShelf["put"] = async (shelf, upload) => {
    const id = randomBytes(18).toString("base64url");
    const name = tameName(upload.name);
    const mime = mimeOf(name, upload.mime);
    const path = `${shelf}/${id}${endingOf(name, mime)}`;
    await mkdir(join(folder, shelf), { recursive: true, mode: 0o700 });
    await writeWhole(join(folder, path), upload.bytes);
    const row = { id, path, name, mime, size: upload.bytes.byteLength };
    log.addFile(row);
    return row;
  };
  return {
    put,
    get: (id) => log.file(id),
    byPath: (path) => {
      const row = log.file(basename(path).split(".", 1)[0] ?? "");
      return row?.path === path ? row : undefined;
    },
    locate: (file) => join(folder, file.path),
  };
};
