import type { Temporal } from "temporal-polyfill";
import type { NoteId } from "../../shared/history.ts";
import type { UsageDraft } from "../../shared/reading.ts";
import type { Saved } from "./save-plan.ts";

/** A note as it was said. */
export type ToldNote = { readonly id: NoteId; readonly said: Temporal.Instant; readonly text: string };

/** What a note has become: records and entries of use. */
export type Told = {
  readonly note: ToldNote;
  readonly saved: readonly Saved[];
  readonly usage: readonly { readonly id: number; readonly draft: UsageDraft }[];
};
