import { z } from "zod";
import type { Db } from "./open.ts";

/** Identifies what a message shows, so that a reply to it or a tap on it finds the records again. */
export const shownSchema = z.object({
  records: z.array(z.number()).default([]),
  noteId: z.number().nullable().default(null),
  nudge: z.boolean().default(false),
});
export type Shown = z.infer<typeof shownSchema>;
export const NOTHING_SHOWN: Shown = { records: [], noteId: null, nudge: false };

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
        `INSERT INTO outbox (channel, chat_id, method, payload, edits, shows, turn_id, created_at, not_before)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
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
        out.at,
      );
    return Number(result.lastInsertRowid);
  }

  /** The oldest item that may be sent now; items of one chat keep their order. */
  next(channel: string, now: string): OutboxItem | undefined {
    const row = this.db
      .prepare(
        `SELECT * FROM outbox AS item WHERE state = 'waiting' AND channel = ? AND not_before <= ?
         AND NOT EXISTS (SELECT 1 FROM outbox AS earlier WHERE earlier.state = 'waiting' AND earlier.channel = item.channel
           AND earlier.chat_id = item.chat_id AND earlier.id < item.id)
         ORDER BY id LIMIT 1`,
      )
      .get(channel, now);
    return row === undefined ? undefined : itemRow.parse(row);
  }

  get(id: number): OutboxItem | undefined {
    const row = this.db.prepare("SELECT * FROM outbox WHERE id = ?").get(id);
    return row === undefined ? undefined : itemRow.parse(row);
  }

  sent(id: number, messageId: number | null): void {
    this.db.prepare("UPDATE outbox SET state = 'sent', message_id = ? WHERE id = ?").run(messageId, id);
  }

  later(id: number, notBefore: string, error: string): void {
    this.db
      .prepare("UPDATE outbox SET attempts = attempts + 1, not_before = ?, last_error = ? WHERE id = ?")
      .run(notBefore, error, id);
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

  /** The newest message to a chat that shows records. */
  lastShown(channel: string, chatId: number): OutboxItem | undefined {
    const row = this.db
      .prepare(
        `SELECT * FROM outbox WHERE channel = ? AND chat_id = ? AND json_array_length(shows, '$.records') > 0
         ORDER BY id DESC LIMIT 1`,
      )
      .get(channel, chatId);
    return row === undefined ? undefined : itemRow.parse(row);
  }
}
