import { z } from "zod";
import type { NoteId } from "../shared/history.ts";
import type { Db } from "./open.ts";

/** A voice note on its way from the messenger to words. */
export type HearingState = "to-fetch" | "to-hear" | "heard" | "unheard";
export type Hearing = {
  readonly noteId: NoteId;
  readonly state: HearingState;
  readonly attempts: number;
  readonly fileId: string | null;
  readonly seconds: number | null;
  /** The outbox id of the reply that is edited as the hearing goes on. */
  readonly reply: number | null;
  readonly lastError: string | null;
};

const hearingRow = z
  .object({
    note_id: z.number(),
    state: z.enum(["to-fetch", "to-hear", "heard", "unheard"]),
    attempts: z.number(),
    file_id: z.string().nullable(),
    seconds: z.number().nullable(),
    reply: z.number().nullable(),
    last_error: z.string().nullable(),
  })
  .transform(
    (row): Hearing => ({
      noteId: row.note_id,
      state: row.state,
      attempts: row.attempts,
      fileId: row.file_id,
      seconds: row.seconds,
      reply: row.reply,
      lastError: row.last_error,
    }),
  );

export class Hearings {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  add(noteId: NoteId, fileId: string | null, seconds: number | null, reply: number | null): void {
    this.db
      .prepare("INSERT INTO hearings (note_id, state, file_id, seconds, reply) VALUES (?, ?, ?, ?, ?)")
      .run(noteId, fileId === null ? "to-hear" : "to-fetch", fileId, seconds, reply);
  }

  /** The next note in that state, by when it was recorded. */
  next(state: HearingState): Hearing | undefined {
    const sql = `SELECT hearings.* FROM hearings JOIN notes ON notes.id = hearings.note_id
      WHERE state = ? ORDER BY julianday(notes.said_at), notes.id LIMIT 1`;
    const row = this.db.prepare(sql).get(state);
    return row === undefined ? undefined : hearingRow.parse(row);
  }

  get(noteId: NoteId): Hearing | undefined {
    const row = this.db.prepare("SELECT * FROM hearings WHERE note_id = ?").get(noteId);
    return row === undefined ? undefined : hearingRow.parse(row);
  }

  move(noteId: NoteId, state: HearingState): void {
    this.db
      .prepare("UPDATE hearings SET state = ?, attempts = 0, last_error = NULL WHERE note_id = ?")
      .run(state, noteId);
  }

  failed(noteId: NoteId, error: string): number {
    this.db
      .prepare("UPDATE hearings SET attempts = attempts + 1, last_error = ? WHERE note_id = ?")
      .run(error, noteId);
    return this.get(noteId)?.attempts ?? 0;
  }

  waiting(): number {
    const count = this.db
      .prepare("SELECT count(*) FROM hearings WHERE state IN ('to-fetch', 'to-hear')")
      .pluck()
      .get();
    return z.number().parse(count);
  }
}
