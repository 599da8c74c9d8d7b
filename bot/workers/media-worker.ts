import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import type { Api } from "grammy";
import type { Logger } from "pino";
import type { Hearing } from "../../store/hearings.ts";
import type { MediaKind, StoredNote } from "../../store/notes.ts";
import type { Store } from "../../store/store.ts";
import { type Download, download } from "./download.ts";

/** Where one channel's files come from. */
export type FileSource = { readonly api: Api; readonly fileUrl: (path: string) => string };

const ATTEMPTS = 5;
const SHORT_WAIT_MS = 2000;

const ENDINGS: Record<MediaKind, string> = { voice: "ogg", photo: "jpg" };

const endingOf = (path: string, kind: MediaKind): string =>
  /\.([a-z0-9]{1,5})$/i.exec(path)?.[1]?.toLowerCase() ?? ENDINGS[kind];

const fetchOne = async (
  source: FileSource,
  mediaDir: string,
  note: StoredNote,
  fileId: string,
): Promise<Download & { readonly name?: string }> => {
  if (note.media === null) return { is: "failed", why: "refused" };
  try {
    const file = await source.api.getFile(fileId);
    if (file.file_path === undefined) return { is: "failed", why: "refused" };
    const name = `note-${note.id}.${endingOf(file.file_path, note.media.kind)}`;
    return {
      ...(await download(source.fileUrl(file.file_path), join(mediaDir, name), file.file_size ?? null)),
      name,
    };
  } catch {
    return { is: "failed", why: "no-connection" };
  }
};

/** Brings sounds and photos from their channel into the media folder, one at a time, oldest first. */
export const createMediaWorker = (parts: {
  readonly store: Store;
  readonly mediaDir: string;
  readonly sourceOf: (channel: string) => FileSource | undefined;
  readonly log: Logger;
  readonly onFetched: () => void;
  readonly onLost: (hearing: Hearing) => void;
}): { wake(): void; stop(): Promise<void> } => {
  const { store, mediaDir, log } = parts;
  const stopping = new AbortController();
  let running: Promise<void> | undefined;

  const kept = (note: StoredNote, name: string): void => {
    store.transact(() => {
      store.notes.keepMedia(note.id, name);
      store.hearings.move(note.id, note.media?.kind === "voice" ? "to-hear" : "heard");
    });
    parts.onFetched();
  };

  const missed = async (hearing: Hearing, note: StoredNote, why: string): Promise<void> => {
    log.warn({ note: note.id, why }, "a file could not be fetched");
    if (store.hearings.failed(note.id, why) < ATTEMPTS && why !== "refused" && why !== "too-large") {
      await wait(SHORT_WAIT_MS * 2 ** hearing.attempts, undefined, { signal: stopping.signal }).catch(
        () => undefined,
      );
      return;
    }
    store.transact(() => {
      store.hearings.move(note.id, "unheard");
      parts.onLost(hearing);
    });
  };

  const take = async (hearing: Hearing): Promise<void> => {
    const note = store.notes.get(hearing.noteId);
    const source = note === undefined ? undefined : parts.sourceOf(note.channel);
    if (note === undefined || source === undefined || hearing.fileId === null) {
      store.hearings.move(hearing.noteId, "unheard");
      return;
    }
    const got = await fetchOne(source, mediaDir, note, hearing.fileId);
    if (got.is === "kept" && got.name !== undefined) kept(note, got.name);
    else await missed(hearing, note, got.is === "failed" ? got.why : "refused");
  };

  const drain = async (): Promise<void> => {
    while (!stopping.signal.aborted) {
      const hearing = store.hearings.next("to-fetch");
      if (hearing === undefined) return;
      await take(hearing);
    }
  };

  return {
    wake: () => {
      running ??= drain().finally(() => {
        running = undefined;
      });
    },
    stop: async () => {
      stopping.abort();
      await running;
    },
  };
};
