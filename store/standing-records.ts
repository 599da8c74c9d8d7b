import { z } from "zod";
import type { KeptRecord, RecordId, Verdict } from "../shared/history.ts";
import type { Db } from "./open.ts";
import { toRecord, toVerdict } from "./rows.ts";

const ROWS = `SELECT records.*, people.name AS said_by FROM records
  JOIN notes ON notes.id = records.note_id JOIN people ON people.id = notes.person_id
  WHERE records.id IN (SELECT value FROM json_each(?))`;
const VERDICTS = `SELECT * FROM verdicts
  WHERE removed = 0 AND record_id IN (SELECT value FROM json_each(?)) ORDER BY said_at, id`;

/** Whatever this connection writes about a record is told of here, whoever writes it. */
const WATCH = `
  CREATE TEMP TRIGGER record_put AFTER INSERT ON records BEGIN SELECT record_touched(NEW.id); END;
  CREATE TEMP TRIGGER record_set AFTER UPDATE ON records BEGIN SELECT record_touched(NEW.id); END;
  CREATE TEMP TRIGGER record_gone AFTER DELETE ON records BEGIN SELECT record_touched(OLD.id); END;
  CREATE TEMP TRIGGER verdict_put AFTER INSERT ON verdicts BEGIN SELECT record_touched(NEW.record_id); END;
  CREATE TEMP TRIGGER verdict_set AFTER UPDATE ON verdicts
    BEGIN SELECT record_touched(OLD.record_id), record_touched(NEW.record_id); END;
  CREATE TEMP TRIGGER verdict_gone AFTER DELETE ON verdicts BEGIN SELECT record_touched(OLD.record_id); END;
  CREATE TEMP TRIGGER note_set AFTER UPDATE OF person_id ON notes BEGIN SELECT record_touched(NULL); END;
  CREATE TEMP TRIGGER person_set AFTER UPDATE OF name ON people BEGIN SELECT record_touched(NULL); END;`;

/** So many records are kept at hand. */
const MOST = 20_000;

const version = z.number();

/** Records as they stand in one database, each read once until something about it changes. */
export class StandingRecords {
  private readonly db: Db;
  private readonly known = new Map<RecordId, KeptRecord>();
  private version: number;

  constructor(db: Db) {
    this.db = db;
    this.version = this.writtenByOthers();
    db.function("record_touched", (id) => {
      if (id === null) this.known.clear();
      else this.known.delete(Number(id));
      return null;
    });
    db.exec(WATCH);
  }

  /** Those that there are of them, in the order of the ids. */
  of(ids: readonly RecordId[]): readonly KeptRecord[] {
    const writtenByOthers = this.writtenByOthers();
    if (writtenByOthers !== this.version) this.forget();
    this.version = writtenByOthers;
    const missing = ids.filter((id) => !this.known.has(id));
    if (missing.length === 0) return ids.flatMap((id) => this.known.get(id) ?? []);
    const read = new Map(this.read(missing).map((record) => [record.id, record]));
    const all = ids.flatMap((id) => this.known.get(id) ?? read.get(id) ?? []);
    if (this.known.size + read.size > MOST) this.forget();
    for (const [id, record] of read) if (this.known.size < MOST) this.known.set(id, record);
    return all;
  }

  /** After what was written is taken back, nothing read since is known for sure. */
  forget(): void {
    this.known.clear();
  }

  /** Changes when another connection has written. */
  private writtenByOthers(): number {
    return version.parse(this.db.prepare("PRAGMA data_version").pluck().get());
  }

  private read(ids: readonly RecordId[]): readonly KeptRecord[] {
    const list = JSON.stringify(ids);
    const verdicts = this.verdictsOf(list);
    return this.db
      .prepare(ROWS)
      .all(list)
      .map(toRecord)
      .map((record) => ({ ...record, verdicts: verdicts.get(record.id) ?? [] }));
  }

  private verdictsOf(list: string): ReadonlyMap<RecordId, readonly Verdict[]> {
    const byRecord = new Map<RecordId, Verdict[]>();
    for (const { recordId, ...verdict } of this.db.prepare(VERDICTS).all(list).map(toVerdict)) {
      const known = byRecord.get(recordId) ?? [];
      byRecord.set(recordId, known);
      known.push(verdict);
    }
    return byRecord;
  }
}
