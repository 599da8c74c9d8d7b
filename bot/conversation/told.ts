import type { Temporal } from "temporal-polyfill";
import type { KeptUsage, NoteId, RecordId } from "../../shared/history.ts";
import type { Again } from "../../shared/memory/intent.ts";
import type { UsageDraft } from "../../shared/reading.ts";
import type { Saved } from "./save-plan.ts";

/** A note as it was said. */
export type ToldNote = { readonly id: NoteId; readonly said: Temporal.Instant; readonly text: string };

/** How a note is to be read: with what points back spelled out, as the work of a record done elsewhere too, or as a word on one. */
export type ReadAs = {
  readonly read: string | null;
  readonly again: Again | null;
  readonly about: RecordId | null;
  /** The record that it goes on from, if it names nothing itself. */
  readonly after: RecordId | null;
  /** Older works that it may be a word on where it is not clear which, the likeliest first. */
  readonly maybe: readonly RecordId[];
};

/** What a note has become: records and entries of use. */
export type Told = {
  readonly note: ToldNote;
  readonly saved: readonly Saved[];
  /** Earlier meter readings that a reading just told can't be true beside. */
  readonly backwards: readonly KeptUsage[];
  readonly usage: readonly { readonly id: number; readonly draft: UsageDraft }[];
};
