import { z } from "zod";
import type { History, KeptRecord, KeptUsage, NoteHit, RecordFilter, RecordId } from "../shared/history.ts";
import type { Db } from "./open.ts";
import { toUsage } from "./rows.ts";
import { StandingRecords } from "./standing-records.ts";

const NEWEST_FIRST = "ORDER BY records.sort_day DESC, records.id DESC";
/** No date on record spans more than this, so that a period's records lie in one stretch of the index. */
const LONGEST_SPAN = "-10 years";

type Condition = { readonly sql: string; readonly values: readonly (string | number)[] };

const anyOf = (column: string, values: readonly string[] | undefined): Condition[] =>
  values === undefined ? [] : [{ sql: `${column} IN (${values.map(() => "?").join(", ")})`, values }];

const during = (filter: RecordFilter): Condition[] => [
  ...(filter.to === undefined ? [] : [{ sql: "records.date_from < ?", values: [filter.to] }]),
  ...(filter.from === undefined
    ? []
    : [
        {
          sql: `records.date_to > ? AND records.date_from > date(?, '${LONGEST_SPAN}')`,
          values: [filter.from, filter.from],
        },
      ]),
];

const conditionsOf = (filter: RecordFilter): Condition[] => [
  { sql: "records.removed = 0", values: [] },
  ...anyOf("records.component", filter.components),
  ...anyOf("records.kind", filter.kinds),
  ...anyOf("records.action", filter.actions),
  ...anyOf("records.outcome", filter.outcomes),
  ...(filter.line === undefined ? [] : [{ sql: "records.line = ?", values: [filter.line] }]),
  ...(filter.noteId === undefined ? [] : [{ sql: "records.note_id = ?", values: [filter.noteId] }]),
  ...during(filter),
  ...(filter.open === true
    ? [
        {
          sql: "records.settled = 0 AND records.closed_by IS NULL AND records.kind IN ('todo', 'fault')",
          values: [],
        },
      ]
    : []),
];

const noteRow = z
  .object({
    id: z.number(),
    text: z.string(),
    said_at: z.string(),
    said_by: z.string(),
    record_ids: z.string().nullable(),
  })
  .transform(
    (row): NoteHit => ({
      noteId: row.id,
      text: row.text,
      saidAt: row.said_at,
      saidBy: row.said_by,
      recordIds: row.record_ids === null ? [] : row.record_ids.split(",").map(Number),
    }),
  );

const NOTE = `SELECT notes.id, notes.text, notes.said_at, people.name AS said_by,
  (SELECT group_concat(records.id) FROM records WHERE records.note_id = notes.id AND records.removed = 0) AS record_ids
  FROM notes JOIN people ON people.id = notes.person_id`;

const idsColumn = z.array(z.number());
const totalRow = z.object({ count: z.number(), cost: z.number() });

/** Words as an FTS5 query, each one quoted. */
const query = (words: string, together: "AND" | "OR"): string =>
  (words.match(/[\p{L}\p{N}]+/gu) ?? []).map((word) => `"${word}"`).join(` ${together} `);

/** The rig's past as kept in SQLite. */
export class StoredHistory implements History {
  private readonly db: Db;
  private readonly standing: StandingRecords;

  constructor(db: Db) {
    this.db = db;
    this.standing = new StandingRecords(db);
  }

  record(id: RecordId): KeptRecord | undefined {
    return this.standing.of([id])[0];
  }

  records(filter: RecordFilter): readonly KeptRecord[] {
    const conditions = conditionsOf(filter);
    const where = conditions.map((condition) => condition.sql).join(" AND ");
    const sql = `SELECT records.id FROM records WHERE ${where} ${NEWEST_FIRST} LIMIT ?`;
    const values = conditions.flatMap((condition) => condition.values);
    return this.standing.of(
      idsColumn.parse(
        this.db
          .prepare(sql)
          .pluck()
          .all(...values, filter.limit ?? -1),
      ),
    );
  }

  /** What was read is not known for sure once what was written is taken back. */
  forget(): void {
    this.standing.forget();
  }

  total(filter: RecordFilter): { readonly count: number; readonly cost: number } {
    const conditions = conditionsOf(filter);
    const sql = `SELECT count(*) AS count, coalesce(sum(cost), 0) AS cost FROM records WHERE ${conditions.map(({ sql }) => sql).join(" AND ")}`;
    return totalRow.parse(this.db.prepare(sql).get(...conditions.flatMap(({ values }) => values)));
  }

  notes(words: string, limit: number): readonly NoteHit[] {
    const all = this.notesMatching(query(words, "AND"), limit);
    return all.length > 0 ? all : this.notesMatching(query(words, "OR"), limit);
  }

  private notesMatching(match: string, limit: number): readonly NoteHit[] {
    if (match === "") return [];
    const sql = `${NOTE} JOIN notes_words ON notes_words.rowid = notes.id
      WHERE notes_words MATCH ? AND notes.told = 1 ORDER BY notes_words.rank LIMIT ?`;
    return this.db
      .prepare(sql)
      .all(match, limit)
      .map((row) => noteRow.parse(row));
  }

  note(id: number): NoteHit | undefined {
    const row = this.db.prepare(`${NOTE} WHERE notes.id = ?`).get(id);
    return row === undefined ? undefined : noteRow.parse(row);
  }

  usage(from?: string, to?: string): readonly KeptUsage[] {
    const sql = `SELECT * FROM use_log WHERE removed = 0 AND coalesce(date_to, '9999') > ?
      AND coalesce(date_from, substr(said_at, 1, 10)) < ? ORDER BY coalesce(date_from, substr(said_at, 1, 10)), id`;
    return this.db
      .prepare(sql)
      .all(from ?? "", to ?? "9999")
      .map(toUsage);
  }

  use(id: number): KeptUsage | undefined {
    const row = this.db.prepare("SELECT * FROM use_log WHERE id = ? AND removed = 0").get(id);
    return row === undefined ? undefined : toUsage(row);
  }
}
