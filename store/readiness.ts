import { z } from "zod";
import type { RecordId } from "../shared/history.ts";
import type { Db } from "./open.ts";

/** When something glued, sealed or laminated may be used again. */
export type ReadyNotice = {
  readonly recordId: RecordId;
  /** ISO instant. */
  readonly at: string;
  readonly words: string;
};

const row = z
  .object({ record_id: z.number(), at: z.string(), words: z.string() })
  .transform(({ record_id, at, words }): ReadyNotice => ({ recordId: record_id, at, words }));

const WAITING = `FROM readiness JOIN records ON records.id = readiness.record_id
  WHERE told_at IS NULL AND records.removed = 0`;

export class Readiness {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  plan({ recordId, at, words }: ReadyNotice): void {
    this.db
      .prepare(
        `INSERT INTO readiness (record_id, at, words) VALUES (?, ?, ?)
         ON CONFLICT (record_id) DO UPDATE SET at = excluded.at, words = excluded.words, told_at = NULL`,
      )
      .run(recordId, at, words);
  }

  /** The ISO instant from which a fix may be used; undefined when nothing of it cures. */
  of(recordId: RecordId): string | undefined {
    const at = this.db.prepare("SELECT at FROM readiness WHERE record_id = ?").pluck().get(recordId);
    return z.string().optional().parse(at);
  }

  /** Notices whose time has come and that were not given yet, the oldest first. */
  due(now: string): readonly ReadyNotice[] {
    return this.db
      .prepare(
        `SELECT readiness.* ${WAITING} AND julianday(readiness.at) <= julianday(?) ORDER BY julianday(readiness.at)`,
      )
      .all(now)
      .map((each) => row.parse(each));
  }

  told(recordId: RecordId, at: string): void {
    this.db.prepare("UPDATE readiness SET told_at = ? WHERE record_id = ?").run(at, recordId);
  }

  soonest(): string | undefined {
    const at = this.db
      .prepare(`SELECT readiness.at ${WAITING} ORDER BY julianday(readiness.at) LIMIT 1`)
      .pluck()
      .get();
    return z.string().optional().parse(at);
  }
}
