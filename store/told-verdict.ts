import type { RecordId, Verdict } from "../shared/history.ts";
import type { Db } from "./open.ts";
import { toVerdict } from "./rows.ts";

/** The outcome that a record came with, as a look on the day of its note; undefined once looks are kept. */
export const toldVerdict = (db: Db, id: RecordId): Verdict | undefined => {
  const sql = `SELECT id AS record_id, outcome, substr(said_at, 1, 10) AS date, said_at, exposure, note_id FROM records
    WHERE id = ? AND kind = 'repair' AND outcome <> 'untested'
    AND NOT EXISTS (SELECT 1 FROM verdicts WHERE record_id = records.id AND verdicts.removed = 0)`;
  const row = db.prepare(sql).get(id);
  return row === undefined ? undefined : toVerdict(row);
};
