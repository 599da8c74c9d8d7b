import { z } from "zod";
import type { RecordId } from "../shared/history.ts";
import type { Db } from "./open.ts";

/** When a fix is due for a look. */
export type Look = {
  readonly recordId: RecordId;
  /** ISO day. */
  readonly due: string;
  readonly why: string;
  /** ISO instant of the last nudge about this due day. */
  readonly nudgedAt: string | null;
  /** ISO day to which the person put it off. */
  readonly putOffTo: string | null;
};

const lookRow = z
  .object({
    record_id: z.number(),
    due: z.string(),
    why: z.string(),
    nudged_at: z.string().nullable(),
    put_off_to: z.string().nullable(),
  })
  .transform(
    (row): Look => ({
      recordId: row.record_id,
      due: row.due,
      why: row.why,
      nudgedAt: row.nudged_at,
      putOffTo: row.put_off_to,
    }),
  );

const DAY_OF_LOOK = "max(looks.due, coalesce(put_off_to, ''))";
const LIVE = "records.removed = 0 AND records.closed_by IS NULL";

/** The looks ahead, derived from records and use; only what was sent and put off is kept from people. */
export class Looks {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  /** Sets the due day. Once nudged about, only a day after the nudge may be nudged about again. */
  plan(recordId: RecordId, due: string, why: string): void {
    this.db
      .prepare(
        `INSERT INTO looks (record_id, due, why) VALUES (?, ?, ?) ON CONFLICT (record_id) DO UPDATE SET
         nudged_at = iif(excluded.due <= substr(nudged_at, 1, 10), nudged_at, NULL), due = excluded.due, why = excluded.why`,
      )
      .run(recordId, due, why);
  }

  /** A verdict was given: what was put off is forgotten and the next due day starts afresh. */
  answered(recordId: RecordId): void {
    this.db.prepare("UPDATE looks SET nudged_at = NULL, put_off_to = NULL WHERE record_id = ?").run(recordId);
  }

  drop(recordId: RecordId): void {
    this.db.prepare("DELETE FROM looks WHERE record_id = ?").run(recordId);
  }

  putOff(recordId: RecordId, day: string): void {
    this.db
      .prepare("UPDATE looks SET put_off_to = ?, nudged_at = NULL WHERE record_id = ?")
      .run(day, recordId);
  }

  putOffs(): readonly { readonly recordId: RecordId; readonly day: string }[] {
    return this.db
      .prepare("SELECT * FROM looks WHERE put_off_to IS NOT NULL")
      .all()
      .map((row) => lookRow.parse(row))
      .flatMap(({ recordId, putOffTo }) => (putOffTo === null ? [] : [{ recordId, day: putOffTo }]));
  }

  nudged(recordIds: readonly RecordId[], at: string): void {
    for (const id of recordIds)
      this.db.prepare("UPDATE looks SET nudged_at = ? WHERE record_id = ?").run(at, id);
  }

  of(recordId: RecordId): Look | undefined {
    const row = this.db.prepare("SELECT * FROM looks WHERE record_id = ?").get(recordId);
    return row === undefined ? undefined : lookRow.parse(row);
  }

  /** Looks whose day has come and that were not nudged about yet, most overdue first. */
  due(today: string): readonly Look[] {
    const sql = `SELECT looks.* FROM looks JOIN records ON records.id = looks.record_id
      WHERE nudged_at IS NULL AND looks.due <= ? AND ${DAY_OF_LOOK} <= ? AND ${LIVE} ORDER BY looks.due, looks.record_id`;
    return this.db
      .prepare(sql)
      .all(today, today)
      .map((row) => lookRow.parse(row));
  }

  /** Looks up to a day, whether nudged about or not, soonest first. */
  until(day: string): readonly Look[] {
    const sql = `SELECT looks.* FROM looks JOIN records ON records.id = looks.record_id
      WHERE ${DAY_OF_LOOK} <= ? AND ${LIVE} ORDER BY ${DAY_OF_LOOK}, looks.record_id`;
    return this.db
      .prepare(sql)
      .all(day)
      .map((row) => lookRow.parse(row));
  }

  /** The day of the soonest look that has not been nudged about. */
  soonest(): string | undefined {
    const sql = `SELECT min(${DAY_OF_LOOK}) FROM looks JOIN records ON records.id = looks.record_id
      WHERE nudged_at IS NULL AND ${LIVE}`;
    return z.string().nullable().parse(this.db.prepare(sql).pluck().get()) ?? undefined;
  }
}
