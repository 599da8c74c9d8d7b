import { z } from "zod";
import type { LineId, NoteId, RecordId, Verdict } from "../shared/history.ts";
import type { Draft, Hemisphere, UsageDraft } from "../shared/reading.ts";
import { exposureSchema, type RecordFields, type Usage } from "../shared/record.ts";
import { boundDate } from "./bound-dates.ts";
import { dayBounds } from "./days.ts";
import { type Cell, type Change, changesOf, Journal, type TurnStamp } from "./journal.ts";
import type { Db } from "./open.ts";
import { toldVerdict } from "./told-verdict.ts";

const COLUMN: Record<keyof RecordFields, "place" | Exclude<keyof RecordFields, "where">> = {
  kind: "kind",
  component: "component",
  where: "place",
  action: "action",
  materials: "materials",
  date: "date",
  outcome: "outcome",
  exposure: "exposure",
  cost: "cost",
  fault: "fault",
  due: "due",
};

const toCell = (value: RecordFields[keyof RecordFields]): Cell =>
  typeof value === "object" && value !== null ? JSON.stringify(value) : value;

const rowid = (result: { lastInsertRowid: number | bigint }): number => Number(result.lastInsertRowid);

/** Writes one turn's records, verdicts and use; every change can be undone. Used inside a transaction. */
export class Keeper {
  private readonly db: Db;
  private readonly stamp: TurnStamp;
  private readonly hemisphere: Hemisphere;
  private readonly journal: Journal;

  constructor(db: Db, stamp: TurnStamp, hemisphere: Hemisphere) {
    this.db = db;
    this.stamp = stamp;
    this.hemisphere = hemisphere;
    this.journal = new Journal(db, stamp);
  }

  addRecord(noteId: NoteId, saidAt: string, draft: Draft, line: LineId | "new"): RecordId {
    const { fields } = draft;
    const { from, to } = dayBounds(fields.date, this.hemisphere);
    const id = rowid(
      this.db
        .prepare(
          `INSERT INTO records (note_id, said_at, kind, component, place, action, materials, date, date_from, date_to, sort_day,
            outcome, exposure, cost, fault, due, done_by, brands, evidence, span_start, span_end)
           VALUES (@noteId, @saidAt, @kind, @component, @where, @action, @materials, @date, @from, @to, @sortDay,
            @outcome, @exposure, @cost, @fault, @due, @doneBy, @brands, @evidence, @start, @end)`,
        )
        .run({
          ...fields,
          noteId,
          saidAt,
          from,
          to,
          sortDay: to ?? saidAt.slice(0, 10),
          materials: JSON.stringify(fields.materials),
          exposure: JSON.stringify(fields.exposure),
          doneBy: draft.doneBy,
          brands: JSON.stringify(draft.brands),
          evidence: JSON.stringify(draft.evidence),
          start: draft.span.start,
          end: draft.span.end,
        }),
    );
    this.db.prepare("UPDATE records SET line = ? WHERE id = ?").run(line === "new" ? id : line, id);
    this.journal.added("records", id);
    return id;
  }

  setField<F extends keyof RecordFields>(id: RecordId, field: F, value: RecordFields[F]): void {
    if (this.journal.set("records", id, COLUMN[field], toCell(value)) && field === "date")
      boundDate(this.db, "records", id, this.hemisphere);
  }

  setDoneBy(id: RecordId, doneBy: string | null): void {
    this.journal.set("records", id, "done_by", doneBy);
  }

  /** The later record dealt with this one; null opens it again. */
  close(id: RecordId, by: RecordId | null): void {
    this.journal.set("records", id, "closed_by", by);
  }

  settle(id: RecordId, settled: boolean): void {
    this.journal.set("records", id, "settled", settled ? 1 : 0);
  }

  /** What was to be bought for it is there. */
  got(id: RecordId): void {
    this.journal.set("records", id, "got", 1);
  }

  /** Takes a record away. What it had closed is open again, and what its note said of those is taken back. */
  remove(id: RecordId): void {
    for (const closed of recordsClosedBy(this.db, id)) this.reopen(closed, id);
    this.journal.set("records", id, "removed", 1);
  }

  private reopen(closed: RecordId, by: RecordId): void {
    const turn = turnThatMade(this.db, by);
    if (turn !== undefined) {
      const verdicts = verdictsOn(this.db, closed);
      this.journal.undo(
        turn,
        ({ thing, thingId }) =>
          (thing === "records" && Number(thingId) === closed) ||
          (thing === "verdicts" && verdicts.includes(Number(thingId))),
      );
    }
    this.close(closed, null);
  }

  /** Adds a look at a fix, which is then the record's outcome; what was told with the fix stays a look of its own. */
  addVerdict(recordId: RecordId, verdict: Omit<Verdict, "saidAt">): void {
    const told = toldVerdict(this.db, recordId);
    if (told !== undefined) this.insertVerdict(recordId, told);
    this.insertVerdict(recordId, { ...verdict, saidAt: this.stamp.at });
    this.setField(recordId, "outcome", verdict.outcome);
    if (verdict.exposure.length > 0)
      this.setField(recordId, "exposure", z.array(exposureSchema).parse(verdict.exposure));
  }

  private insertVerdict(recordId: RecordId, verdict: Verdict): void {
    const { outcome, when, saidAt, exposure, noteId } = verdict;
    const result = this.db
      .prepare(
        "INSERT INTO verdicts (record_id, outcome, date, said_at, exposure, note_id) VALUES (?, ?, ?, ?, ?, ?)",
      )
      .run(recordId, outcome, when, saidAt, JSON.stringify(exposure), noteId);
    this.journal.added("verdicts", rowid(result));
  }

  addUsage(noteId: NoteId, { usage }: Pick<UsageDraft, "usage">): number {
    const { from, to } = dayBounds(usage.date, this.hemisphere);
    const id = rowid(
      this.db
        .prepare(
          `INSERT INTO use_log (note_id, said_at, unit, count, reading, date, date_from, date_to) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
        )
        .run(
          noteId,
          this.stamp.at,
          usage.unit,
          amount(usage, "count"),
          amount(usage, "reading"),
          usage.date,
          from,
          to,
        ),
    );
    this.journal.added("use_log", id);
    return id;
  }

  setUsage(id: number, usage: Usage): void {
    this.journal.set("use_log", id, "unit", usage.unit);
    this.journal.set("use_log", id, "count", amount(usage, "count"));
    this.journal.set("use_log", id, "reading", amount(usage, "reading"));
    if (this.journal.set("use_log", id, "date", usage.date))
      boundDate(this.db, "use_log", id, this.hemisphere);
  }

  removeUsage(id: number): void {
    this.journal.set("use_log", id, "removed", 1);
  }

  rewordNote(id: NoteId, text: string): void {
    this.journal.set("notes", id, "text", text);
  }

  setSetting(key: string, value: string): void {
    this.journal.set("settings", key, "value", value);
  }

  addTrip(trip: { leaves: string; returns: string | null; miles: number | null }): number {
    const id = rowid(
      this.db
        .prepare("INSERT INTO trips (leaves, returns, miles) VALUES (?, ?, ?)")
        .run(trip.leaves, trip.returns, trip.miles),
    );
    this.journal.added("trips", id);
    return id;
  }

  setTrip(id: number, field: "leaves" | "returns" | "miles" | "ticked" | "state", value: Cell): void {
    this.journal.set("trips", id, field, value);
  }

  undo(turnId: number): { readonly reversed: readonly Change[]; readonly kept: readonly Change[] } {
    const result = this.journal.undo(turnId);
    for (const change of result.reversed) {
      if (change.field === "date" && (change.thing === "records" || change.thing === "use_log")) {
        boundDate(this.db, change.thing, Number(change.thingId), this.hemisphere);
      }
    }
    return result;
  }

  /** What this turn has changed so far. */
  changes(): readonly Change[] {
    return changesOf(this.db, this.stamp.turnId);
  }
}

const ids = z.array(z.number());

const recordsClosedBy = (db: Db, id: RecordId): readonly RecordId[] =>
  ids.parse(db.prepare("SELECT id FROM records WHERE closed_by = ?").pluck().all(id));

const turnThatMade = (db: Db, id: RecordId): number | undefined => {
  const sql =
    "SELECT turn_id FROM changes WHERE thing = 'records' AND thing_id = ? AND field = 'removed' ORDER BY id LIMIT 1";
  return z
    .number()
    .optional()
    .parse(db.prepare(sql).pluck().get(String(id)));
};

const verdictsOn = (db: Db, id: RecordId): readonly number[] =>
  ids.parse(db.prepare("SELECT id FROM verdicts WHERE record_id = ?").pluck().all(id));

const amount = (usage: Usage, which: "count" | "reading"): number | null => {
  if (which === "reading") return "reading" in usage ? usage.reading : null;
  return "count" in usage ? usage.count : null;
};
