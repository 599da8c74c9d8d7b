import { z } from "zod";
import type { Db } from "./open.ts";
import type { Chat } from "./people.ts";

/** Identifies what a message shows, so that a reply to it or a tap on it finds the records again. */
export const shownSchema = z.object({
  /** Whether it shows what a note made, what was asked for, or what nobody asked for. */
  of: z.enum(["note", "answer", "nudge"]).nullable().default(null),
  records: z.array(z.number()).default([]),
  usage: z.array(z.number()).default([]),
  /** Rows of standing care. */
  care: z.array(z.string()).default([]),
  /** Lines of a list with boxes, in their order, by key. */
  lines: z.array(z.string()).default([]),
  noteId: z.number().nullable().default(null),
  /** The question that it answers, as data. */
  asked: z.unknown(),
});
export type Shown = z.infer<typeof shownSchema>;
export const NOTHING_SHOWN: Shown = {
  of: null,
  records: [],
  usage: [],
  care: [],
  lines: [],
  noteId: null,
  asked: null,
};

export type Outgoing = {
  readonly channel: string;
  readonly chatId: number;
  readonly method: string;
  readonly payload: Readonly<Record<string, unknown>>;
  /** The outbox id of the message that this one edits. */
  readonly edits?: number;
  readonly shows: Shown;
  readonly turnId: number | null;
  readonly at: string;
};

export type OutboxItem = Omit<Outgoing, "edits"> & {
  readonly id: number;
  readonly edits: number | null;
  readonly attempts: number;
  readonly messageId: number | null;
};

const itemRow = z
  .object({
    id: z.number(),
    channel: z.string(),
    chat_id: z.number(),
    method: z.string(),
    payload: z.string().transform((text) => z.record(z.string(), z.unknown()).parse(JSON.parse(text))),
    edits: z.number().nullable(),
    shows: z.string().transform((text) => shownSchema.parse(JSON.parse(text))),
    turn_id: z.number().nullable(),
    created_at: z.string(),
    attempts: z.number(),
    message_id: z.number().nullable(),
  })
  .transform(
    (row): OutboxItem => ({
      id: row.id,
      channel: row.channel,
      chatId: row.chat_id,
      method: row.method,
      payload: row.payload,
      edits: row.edits,
      shows: row.shows,
      turnId: row.turn_id,
      at: row.created_at,
      attempts: row.attempts,
      messageId: row.message_id,
    }),
  );

/** Replies wait here from the turn that made them until the messenger has them. */
export class Outbox {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  put(out: Outgoing): number {
    const result = this.db
      .prepare(
        `INSERT INTO outbox (channel, chat_id, method, payload, edits, shows, turn_id, created_at)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
      )
      .run(
        out.channel,
        out.chatId,
        out.method,
        JSON.stringify(out.payload),
        out.edits ?? null,
        JSON.stringify(out.shows),
        out.turnId,
        out.at,
      );
    return Number(result.lastInsertRowid);
  }

  /** The oldest item that waits. */
  next(channel: string): OutboxItem | undefined {
    const row = this.db
      .prepare("SELECT * FROM outbox WHERE state = 'waiting' AND +channel = ? ORDER BY id LIMIT 1")
      .get(channel);
    return row === undefined ? undefined : itemRow.parse(row);
  }

  get(id: number): OutboxItem | undefined {
    const row = this.db.prepare("SELECT * FROM outbox WHERE id = ?").get(id);
    return row === undefined ? undefined : itemRow.parse(row);
  }

  sent(id: number, messageId: number | null): void {
    this.db.prepare("UPDATE outbox SET state = 'sent', message_id = ? WHERE id = ?").run(messageId, id);
  }

  later(id: number, error: string): void {
    this.db.prepare("UPDATE outbox SET attempts = attempts + 1, last_error = ? WHERE id = ?").run(error, id);
  }

  refused(id: number, error: string): void {
    this.db.prepare("UPDATE outbox SET state = 'refused', last_error = ? WHERE id = ?").run(error, id);
  }

  /** What a delivered message shows; an edit of it counts as the newer showing. */
  shownBy(channel: string, chatId: number, messageId: number): OutboxItem | undefined {
    const row = this.db
      .prepare(
        `SELECT * FROM outbox WHERE channel = ? AND chat_id = ? AND message_id = ? ORDER BY id DESC LIMIT 1`,
      )
      .get(channel, chatId, messageId);
    return row === undefined ? undefined : itemRow.parse(row);
  }

  /** The newest message to a chat that shows something, of one sort if one is given. */
  lastShown(channel: string, chatId: number, of?: Shown["of"]): OutboxItem | undefined {
    const sort = of == null ? "" : "AND shows ->> '$.of' = ?";
    const row = this.db
      .prepare(
        `SELECT * FROM outbox WHERE channel = ? AND chat_id = ? AND shows ->> '$.of' IS NOT NULL ${sort}
         ORDER BY id DESC LIMIT 1`,
      )
      .get(channel, chatId, ...(of == null ? [] : [of]));
    return row === undefined ? undefined : itemRow.parse(row);
  }

  /** The newest list with boxes in a chat, and whether nothing was said there since. */
  lastList(channel: string, chatId: number): { readonly lines: readonly string[]; readonly newest: boolean } {
    const newest = this.lastSaid(channel, chatId);
    const row = this.db
      .prepare(
        `SELECT * FROM outbox WHERE channel = ? AND chat_id = ? AND shows ->> '$.lines[0]' IS NOT NULL
         ORDER BY id DESC LIMIT 1`,
      )
      .get(channel, chatId);
    if (row === undefined) return { lines: [], newest: false };
    const { id, shows } = itemRow.parse(row);
    return { lines: shows.lines, newest: id === newest?.id };
  }

  /** The newest message to a chat, or the newest edit of one. */
  lastSaid(channel: string, chatId: number): OutboxItem | undefined {
    const row = this.db
      .prepare(
        `SELECT * FROM outbox WHERE channel = ? AND chat_id = ? AND method IN ('sendMessage', 'editMessageText')
         ORDER BY id DESC LIMIT 1`,
      )
      .get(channel, chatId);
    return row === undefined ? undefined : itemRow.parse(row);
  }

  /** The newest message to a chat that answers a note, whether or not anything was found in that. */
  lastTold(channel: string, chatId: number): OutboxItem | undefined {
    const row = this.db
      .prepare(
        `SELECT * FROM outbox WHERE channel = ? AND chat_id = ? AND shows ->> '$.noteId' IS NOT NULL
         ORDER BY id DESC LIMIT 1`,
      )
      .get(channel, chatId);
    return row === undefined ? undefined : itemRow.parse(row);
  }

  /** The newest message that shows what a note made. */
  aboutNote(noteId: number): OutboxItem | undefined {
    const row = this.db
      .prepare("SELECT * FROM outbox WHERE shows ->> '$.noteId' = ? ORDER BY id DESC LIMIT 1")
      .get(noteId);
    return row === undefined ? undefined : itemRow.parse(row);
  }

  /** Everything that was delivered to a chat, newest first. */
  *newestFirst(channel: string, chatId: number): Generator<OutboxItem> {
    const rows = this.db
      .prepare("SELECT * FROM outbox WHERE channel = ? AND chat_id = ? AND state = 'sent' ORDER BY id DESC")
      .iterate(channel, chatId);
    for (const row of rows) yield itemRow.parse(row);
  }

  /** The highest message number of a chat; 0 when there is none. */
  newestMessage(channel: string, chatId: number): number {
    const sql = "SELECT coalesce(max(message_id), 0) FROM outbox WHERE channel = ? AND chat_id = ?";
    return z.number().parse(this.db.prepare(sql).pluck().get(channel, chatId));
  }

  /** Whether a chat was told some words since an instant. */
  hasSaid({ channel, chatId }: Chat, words: string, since: string): boolean {
    const sql = `SELECT EXISTS (SELECT 1 FROM outbox WHERE channel = ? AND chat_id = ? AND created_at > ?
      AND instr(payload ->> '$.text', ?) > 0)`;
    return this.db.prepare(sql).pluck().get(channel, chatId, since, words) === 1;
  }
}
