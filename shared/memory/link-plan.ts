import type { LineId, RecordId, Verdict } from "../history.ts";
import type { Draft } from "../reading.ts";
import type { RecordFields } from "../record.ts";

/** A record that is kept already, or the draft at this place in the same note. */
export type Ref = { readonly record: RecordId } | { readonly draft: number };

/** The saver fills in the note. */
export type NewVerdict = Omit<Verdict, "noteId">;

/** A record of its own. */
export type Keep = {
  readonly step: "keep";
  readonly draft: Draft;
  /** The line of history that it continues; null opens a new one. */
  readonly line: { readonly id: LineId } | { readonly draft: number } | null;
  /** Todos and faults that it deals with. */
  readonly closes: readonly Ref[];
  /** The earlier fix of the same trouble that it takes over from. */
  readonly supersedes: Ref | null;
  /** What it says about earlier fixes. */
  readonly verdicts: readonly { readonly on: Ref; readonly verdict: NewVerdict }[];
};

export type LinkStep =
  | Keep
  /** Word on a record that exists; `fill` holds fields that were empty and are told now, and a sum told anew. */
  | {
      readonly step: "verdict";
      readonly draft: Draft;
      readonly record: RecordId;
      readonly verdict: NewVerdict;
      readonly fill: Partial<RecordFields>;
    }
  /** Told again; `fill` may be empty. */
  | {
      readonly step: "same";
      readonly draft: Draft;
      readonly record: RecordId;
      readonly fill: Partial<RecordFields>;
    }
  /** Unclear which record is meant: keep `otherwise` now, ask once; picking a candidate replaces it by `picked`. */
  | {
      readonly step: "ask";
      readonly draft: Draft;
      readonly candidates: readonly RecordId[];
      readonly otherwise: Keep;
      readonly picked: readonly LinkStep[];
    };

/** One step a draft, in the order of the drafts. */
export type LinkPlan = readonly LinkStep[];
