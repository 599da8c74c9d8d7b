import type { Edtf, Exposure, RecordFields, Usage } from "./record.ts";
import type { Action, ComponentId, Kind, Outcome } from "./vocabulary.ts";

export type RecordId = number;
export type NoteId = number;
/** Attempts on one trouble share a line. */
export type LineId = number;

/** One look at a fix: evidence about its life. */
export type Verdict = {
  readonly outcome: Exclude<Outcome, "untested">;
  readonly when: Edtf;
  /** ISO 8601 instant. */
  readonly saidAt: string;
  readonly exposure: readonly Exposure[];
  readonly noteId: NoteId | null;
};

export type KeptRecord = {
  readonly id: RecordId;
  readonly noteId: NoteId;
  /** ISO 8601 instant of the note that made it. */
  readonly saidAt: string;
  readonly saidBy: string;
  /** The latest state, corrections and verdicts included. */
  readonly fields: RecordFields;
  readonly doneBy: string | null;
  readonly brands: readonly string[];
  readonly line: LineId;
  /** The later record that dealt with this fault or todo, or took over from this repair. */
  readonly closedBy: RecordId | null;
  /** A todo ticked off, or a fault settled, without a record of the work. */
  readonly settled: boolean;
  /** What was to be bought for it is there; the job may still be open. */
  readonly got: boolean;
  readonly removed: boolean;
  /** Oldest first. */
  readonly verdicts: readonly Verdict[];
};

export type KeptUsage = {
  readonly id: number;
  readonly noteId: NoteId;
  readonly saidAt: string;
  readonly usage: Usage;
};

export type NoteHit = {
  readonly noteId: NoteId;
  readonly text: string;
  readonly saidAt: string;
  readonly saidBy: string;
  readonly recordIds: readonly RecordId[];
};

/**
 * Every condition that is given must hold. Days are ISO dates, `to` exclusive: a record fits when its date's bounds overlap
 * them; one without a date does not fit then.
 */
export type RecordFilter = {
  readonly components?: readonly ComponentId[];
  readonly kinds?: readonly Kind[];
  readonly actions?: readonly Action[];
  /** The latest verdict on it. */
  readonly outcomes?: readonly Outcome[];
  readonly line?: LineId;
  readonly noteId?: NoteId;
  readonly from?: string;
  readonly to?: string;
  /** Todos and faults not yet dealt with. */
  readonly open?: boolean;
  readonly limit?: number;
};

/**
 * One rig's past, as far as it is needed: removed records are left out unless asked for by id. Newest work first: by the end
 * of the date's bounds, a record without a date by the day of its note, then by id.
 */
export interface History {
  record(id: RecordId): KeptRecord | undefined;
  records(filter: RecordFilter): readonly KeptRecord[];
  /** How many fit, whatever the limit, and the money that they say. */
  total(filter: RecordFilter): { readonly count: number; readonly cost: number };
  /** Full-text search over the words of notes, best first. */
  notes(words: string, limit: number): readonly NoteHit[];
  note(id: NoteId): NoteHit | undefined;
  /** Oldest first; days as in RecordFilter. */
  usage(from?: string, to?: string): readonly KeptUsage[];
}
