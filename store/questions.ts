import { z } from "zod";
import type { Db } from "./open.ts";

/** The one thing that the bot has asked in a chat and waits to hear about. */
export class Questions {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  ask(channel: string, chatId: number, asked: unknown, at: string): void {
    this.db
      .prepare(
        `INSERT INTO questions (channel, chat_id, asked, at) VALUES (?, ?, ?, ?)
         ON CONFLICT (channel, chat_id) DO UPDATE SET asked = excluded.asked, at = excluded.at`,
      )
      .run(channel, chatId, JSON.stringify(asked), at);
  }

  pending(channel: string, chatId: number): unknown {
    const text = this.db
      .prepare("SELECT asked FROM questions WHERE channel = ? AND chat_id = ?")
      .pluck()
      .get(channel, chatId);
    const asked = z.string().optional().parse(text);
    return asked === undefined ? undefined : JSON.parse(asked);
  }

  answered(channel: string, chatId: number): void {
    this.db.prepare("DELETE FROM questions WHERE channel = ? AND chat_id = ?").run(channel, chatId);
  }
}
