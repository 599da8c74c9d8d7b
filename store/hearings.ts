import { z } from "zod";
import type { NoteId } from "../shared/history.ts";
import type { Db } from "./open.ts";
import type { Chat } from "./people.ts";

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
  /** What is said about the note once it was heard, or why it was not. */
  readonly outcome: HeardOutcome | null;
  readonly lastError: string | null;
};

const outcomeSchema = z.object({ text: z.string(), records: z.array(z.number()) });
export type HeardOutcome = z.infer<typeof outcomeSchema>;

const hearingRow = z
  .object({
    note_id: z.number(),
    state: z.enum(["to-fetch", "to-hear", "heard", "unheard"]),
    attempts: z.number(),
    file_id: z.string().nullable(),
    seconds: z.number().nullable(),
    reply: z.number().nullable(),
    outcome: z
      .string()
      .nullable()
      .transform((text) => (text === null ? null : outcomeSchema.parse(JSON.parse(text)))),
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
      outcome: row.outcome,
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

  /** Closes a hearing with what came of it. */
  finish(noteId: NoteId, state: "heard" | "unheard", outcome: HeardOutcome): void {
    this.db
      .prepare("UPDATE hearings SET state = ?, outcome = ? WHERE note_id = ?")
      .run(state, JSON.stringify(outcome), noteId);
  }

  /** The voice notes that one reply speaks of, by when they were recorded. */
  sharing(reply: number): readonly Hearing[] {
    const sql = `SELECT hearings.* FROM hearings JOIN notes ON notes.id = hearings.note_id
      WHERE reply = ? ORDER BY julianday(notes.said_at), notes.id`;
    return this.db
      .prepare(sql)
      .all(reply)
      .map((row) => hearingRow.parse(row));
  }

  /** The reply of the newest voice note of a chat that is still waiting to be heard. */
  waitingReply({ channel, chatId }: Chat): number | undefined {
    const sql = `SELECT reply FROM hearings JOIN notes ON notes.id = hearings.note_id
      WHERE hearings.state IN ('to-fetch', 'to-hear') AND reply IS NOT NULL AND channel = ? AND chat_id = ?
      ORDER BY hearings.note_id DESC LIMIT 1`;
    return z.number().optional().parse(this.db.prepare(sql).pluck().get(channel, chatId));
  }
}
