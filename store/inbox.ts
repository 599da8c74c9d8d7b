import { z } from "zod";
import type { Db } from "./open.ts";

export type InboxItem = {
  readonly id: number;
  readonly channel: string;
  readonly updateId: number;
  /** The update as the Bot API gave it. */
  readonly body: unknown;
  readonly receivedAt: string;
  readonly attempts: number;
};

const itemRow = z
  .object({
    id: z.number(),
    channel: z.string(),
    update_id: z.number(),
    body: z.string().transform((text): unknown => JSON.parse(text)),
    received_at: z.string(),
    attempts: z.number(),
  })
  .transform(
    ({ update_id, received_at, ...rest }): InboxItem => ({
      ...rest,
      updateId: update_id,
      receivedAt: received_at,
    }),
  );

/** Every update, kept before it is acknowledged; the pair of channel and update id makes handling idempotent. */
export class Inbox {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  /** Keeps an update; one that is already here is left as it is. */
  put(channel: string, updateId: number, body: unknown, at: string): void {
    this.db
      .prepare(
        "INSERT INTO inbox (channel, update_id, body, received_at) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING",
      )
      .run(channel, updateId, JSON.stringify(body), at);
  }

  /** The highest update id of a channel; 0 when nothing came yet. */
  newest(channel: string): number {
    return z
      .number()
      .parse(
        this.db
          .prepare("SELECT coalesce(max(update_id), 0) FROM inbox WHERE channel = ?")
          .pluck()
          .get(channel),
      );
  }

  next(): InboxItem | undefined {
    const row = this.db.prepare("SELECT * FROM inbox WHERE state = 'waiting' ORDER BY id LIMIT 1").get();
    return row === undefined ? undefined : itemRow.parse(row);
  }

  done(id: number): void {
    this.db.prepare("UPDATE inbox SET state = 'done' WHERE id = ?").run(id);
  }

  /** Counts a failed attempt; after the last one the item is set aside and never blocks the others. */
  failed(id: number, error: string, attemptsAllowed: number): "again" | "set-aside" {
    this.db
      .prepare(
        "UPDATE inbox SET attempts = attempts + 1, last_error = ?, state = iif(attempts + 1 >= ?, 'set-aside', 'waiting') WHERE id = ?",
      )
      .run(error, attemptsAllowed, id);
    const state = this.db.prepare("SELECT state FROM inbox WHERE id = ?").pluck().get(id);
    return state === "set-aside" ? "set-aside" : "again";
  }
}
