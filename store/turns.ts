import { z } from "zod";
import type { Db } from "./open.ts";

export type NewTurn = {
  readonly inboxId: number | null;
  readonly channel: string;
  readonly chatId: number;
  readonly personId: number | null;
  readonly at: string;
};

/** A turn of the conversation: one message handled, with all that it changed. */
export class Turns {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  begin(turn: NewTurn): number {
    const result = this.db
      .prepare(
        "INSERT INTO turns (inbox_id, channel, chat_id, person_id, at) VALUES (@inboxId, @channel, @chatId, @personId, @at)",
      )
      .run(turn);
    return Number(result.lastInsertRowid);
  }

  undoes(turnId: number, undone: number): void {
    this.db.prepare("UPDATE turns SET undoes = ? WHERE id = ?").run(undone, turnId);
  }

  undoneBy(turnId: number): number | undefined {
    const by = this.db
      .prepare("SELECT id FROM turns WHERE undoes = ? ORDER BY id DESC LIMIT 1")
      .pluck()
      .get(turnId);
    return z.number().optional().parse(by);
  }

  /** The newest turns of a chat that changed something still standing. */
  lastChanging(channel: string, chatId: number): number | undefined {
    const sql = `SELECT turns.id FROM turns WHERE channel = ? AND chat_id = ?
      AND EXISTS (SELECT 1 FROM changes WHERE changes.turn_id = turns.id AND undone_in IS NULL) ORDER BY id DESC LIMIT 1`;
    return z.number().optional().parse(this.db.prepare(sql).pluck().get(channel, chatId));
  }
}
