import { z } from "zod";
import type { NoteId } from "../shared/history.ts";
import type { Db } from "./open.ts";

export type NewNote = {
  readonly inboxId: number | null;
  readonly channel: string;
  readonly chatId: number;
  readonly messageId: number;
  readonly personId: number;
  /** ISO 8601 instant. */
  readonly saidAt: string;
  readonly text: string;
  /** A file name in the media folder, and what it holds. */
  readonly media: { readonly file: string | null; readonly kind: MediaKind } | null;
};
export type MediaKind = "voice" | "photo";

export type StoredNote = NewNote & {
  readonly id: NoteId;
  /** What the recogniser wrote, before anything was put right. */
  readonly heard: string | null;
};

const noteRow = z
  .object({
    id: z.number(),
    inbox_id: z.number().nullable(),
    channel: z.string(),
    chat_id: z.number(),
    message_id: z.number(),
    person_id: z.number(),
    said_at: z.string(),
    text: z.string(),
    heard: z.string().nullable(),
    media: z.string().nullable(),
    media_kind: z.enum(["voice", "photo"]).nullable(),
  })
  .transform(
    (row): StoredNote => ({
      id: row.id,
      inboxId: row.inbox_id,
      channel: row.channel,
      chatId: row.chat_id,
      messageId: row.message_id,
      personId: row.person_id,
      saidAt: row.said_at,
      text: row.text,
      heard: row.heard,
      media: row.media_kind === null ? null : { file: row.media, kind: row.media_kind },
    }),
  );

/** What people said, word for word, with the sound or photo it came with. */
export class Notes {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  add(note: NewNote): NoteId {
    const result = this.db
      .prepare(
        `INSERT INTO notes (inbox_id, channel, chat_id, message_id, person_id, said_at, text, media, media_kind)
         VALUES (@inboxId, @channel, @chatId, @messageId, @personId, @saidAt, @text, @file, @kind)`,
      )
      .run({ ...note, file: note.media?.file ?? null, kind: note.media?.kind ?? null });
    return Number(result.lastInsertRowid);
  }

  get(id: NoteId): StoredNote | undefined {
    const row = this.db.prepare("SELECT * FROM notes WHERE id = ?").get(id);
    return row === undefined ? undefined : noteRow.parse(row);
  }

  ofMessage(channel: string, chatId: number, messageId: number): StoredNote | undefined {
    const row = this.db
      .prepare(
        "SELECT * FROM notes WHERE channel = ? AND chat_id = ? AND message_id = ? ORDER BY id DESC LIMIT 1",
      )
      .get(channel, chatId, messageId);
    return row === undefined ? undefined : noteRow.parse(row);
  }

  keepMedia(id: NoteId, file: string): void {
    this.db.prepare("UPDATE notes SET media = ? WHERE id = ?").run(file, id);
  }

  /** Keeps what was heard in a voice note: its words, and what the recogniser wrote at first. */
  heard(id: NoteId, text: string, hypothesis: string): void {
    this.db.prepare("UPDATE notes SET text = ?, heard = ? WHERE id = ?").run(text, hypothesis, id);
  }

  /** Marks a note as one that told something, so that its words are found again; questions and corrections are not. */
  told(id: NoteId): void {
    this.db.prepare("UPDATE notes SET told = 1 WHERE id = ?").run(id);
  }
}
