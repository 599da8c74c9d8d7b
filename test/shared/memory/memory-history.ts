import { daySpan } from "../../../shared/edtf.ts";
import type {
  History,
  KeptRecord,
  KeptUsage,
  NoteHit,
  NoteId,
  RecordFilter,
  RecordId,
} from "../../../shared/history.ts";
import { plainWords } from "../../../shared/memory/words.ts";
import type { Hemisphere } from "../../../shared/reading.ts";
import type { Usage } from "../../../shared/record.ts";

type Bounds = { readonly from: string; readonly to: string };
type Note = { readonly text: string; readonly saidAt: string; readonly saidBy: string };

/** What is kept at one moment; replaced as a whole, so that it can be put back. */
export type Kept = {
  readonly notes: ReadonlyMap<NoteId, Note>;
  readonly records: ReadonlyMap<RecordId, KeptRecord>;
  readonly usage: ReadonlyMap<number, KeptUsage>;
};

const EMPTY: Kept = { notes: new Map(), records: new Map(), usage: new Map() };

const among = <T>(wanted: readonly T[] | undefined, value: T | null): boolean =>
  wanted === undefined || (value !== null && wanted.includes(value));

/** The port's contract in memory, for tests. */
export class MemoryHistory implements History {
  private readonly hemisphere: Hemisphere;
  kept: Kept = EMPTY;

  constructor(hemisphere: Hemisphere) {
    this.hemisphere = hemisphere;
  }

  addNote(text: string, saidAt: string, saidBy: string): NoteId {
    const id = this.kept.notes.size + 1;
    this.kept = { ...this.kept, notes: new Map(this.kept.notes).set(id, { text, saidAt, saidBy }) };
    return id;
  }

  put(record: KeptRecord): void {
    this.kept = { ...this.kept, records: new Map(this.kept.records).set(record.id, record) };
  }

  addUsage(noteId: NoteId, saidAt: string, usage: Usage): KeptUsage {
    const entry = { id: this.kept.usage.size + 1, noteId, saidAt, usage };
    this.putUsage(entry);
    return entry;
  }

  putUsage(entry: KeptUsage): void {
    this.kept = { ...this.kept, usage: new Map(this.kept.usage).set(entry.id, entry) };
  }

  dropUsage(id: number): void {
    const usage = new Map(this.kept.usage);
    usage.delete(id);
    this.kept = { ...this.kept, usage };
  }

  nextId(): RecordId {
    return this.kept.records.size + 1;
  }

  record(id: RecordId): KeptRecord | undefined {
    return this.kept.records.get(id);
  }

  records(filter: RecordFilter): readonly KeptRecord[] {
    return [...this.kept.records.values()]
      .filter((record) => this.fits(record, filter))
      .sort((a, b) => this.sortDay(b).localeCompare(this.sortDay(a)) || b.id - a.id)
      .slice(0, filter.limit);
  }

  total(filter: RecordFilter): { readonly count: number; readonly cost: number } {
    const records = this.records({ ...filter, limit: Number.POSITIVE_INFINITY });
    return {
      count: records.length,
      cost: records.reduce((sum, record) => sum + (record.fields.cost ?? 0), 0),
    };
  }

  notes(words: string, limit: number): readonly NoteHit[] {
    const wanted = new Set(plainWords(words));
    return [...this.kept.notes.entries()]
      .map(([id, note]) => ({
        id,
        hits: new Set(plainWords(note.text).filter((word) => wanted.has(word))).size,
      }))
      .filter(({ hits }) => hits > 0)
      .sort((a, b) => b.hits - a.hits || b.id - a.id)
      .slice(0, limit)
      .flatMap(({ id }) => this.note(id) ?? []);
  }

  note(id: NoteId): NoteHit | undefined {
    const note = this.kept.notes.get(id);
    if (note === undefined) return undefined;
    const recordIds = [...this.kept.records.values()]
      .filter((record) => record.noteId === id && !record.removed)
      .map((record) => record.id);
    return { noteId: id, ...note, recordIds };
  }

  usage(from?: string, to?: string): readonly KeptUsage[] {
    return [...this.kept.usage.values()]
      .filter((entry) => {
        const bounds = this.bounds(entry.usage.date) ?? { from: entry.saidAt.slice(0, 10), to: "9999" };
        return (from === undefined || bounds.to > from) && (to === undefined || bounds.from < to);
      })
      .sort((a, b) => a.saidAt.localeCompare(b.saidAt) || a.id - b.id);
  }

  private bounds(date: string | null): Bounds | undefined {
    const span = date === null ? undefined : daySpan(date, this.hemisphere);
    return span === undefined ? undefined : { from: span.from.toString(), to: span.to.toString() };
  }

  private sortDay(record: KeptRecord): string {
    return this.bounds(record.fields.date)?.to ?? record.saidAt.slice(0, 10);
  }

  private fits(record: KeptRecord, filter: RecordFilter): boolean {
    const { fields } = record;
    const isOpen =
      (fields.kind === "todo" || fields.kind === "fault") && record.closedBy === null && !record.settled;
    return (
      !record.removed &&
      among(filter.components, fields.component) &&
      among(filter.kinds, fields.kind) &&
      among(filter.actions, fields.action) &&
      among(filter.outcomes, fields.outcome) &&
      (filter.line === undefined || record.line === filter.line) &&
      (filter.noteId === undefined || record.noteId === filter.noteId) &&
      (filter.open === undefined || isOpen === filter.open) &&
      this.isWithin(record, filter)
    );
  }

  private isWithin(record: KeptRecord, { from, to }: RecordFilter): boolean {
    if (from === undefined && to === undefined) return true;
    const bounds = this.bounds(record.fields.date);
    return (
      bounds !== undefined &&
      (from === undefined || bounds.to > from) &&
      (to === undefined || bounds.from < to)
    );
  }
}
