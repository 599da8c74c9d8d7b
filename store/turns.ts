import { z } from "zod";
import type { Db } from "./open.ts";
import type { Chat } from "./people.ts";

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

  /** The newest turn of a chat, before the given one, with changes that still stand: of work, or of an undo. */
  lastChanging({ channel, chatId }: Chat, before: number, which: "work" | "undo"): number | undefined {
    const sql = `SELECT turns.id FROM turns WHERE channel = ? AND chat_id = ? AND id < ?
      AND undoes IS ${which === "work" ? "NULL" : "NOT NULL"}
      AND EXISTS (SELECT 1 FROM changes WHERE changes.turn_id = turns.id AND undone_in IS NULL) ORDER BY id DESC LIMIT 1`;
    return z
      .number()
      .optional()
      .parse(this.db.prepare(sql).pluck().get(channel, chatId, before));
  }

  /** Notes which note a turn told. */
  tells(turnId: number, noteId: number): void {
    this.db.prepare("UPDATE turns SET note_id = ? WHERE id = ?").run(noteId, turnId);
  }

  /** The newest turn that told a note. */
  ofNote(noteId: number): number | undefined {
    const id = this.db
      .prepare("SELECT id FROM turns WHERE note_id = ? ORDER BY id DESC LIMIT 1")
      .pluck()
      .get(noteId);
    return z.number().optional().parse(id);
  }
}
