import type { KeptUsage, RecordId } from "../history.ts";
import type { Field, RecordFields, Usage } from "../record.ts";

type SetField = {
  [F in Field]: {
    readonly do: "set";
    readonly record: RecordId;
    readonly field: F;
    readonly from: RecordFields[F];
    readonly to: RecordFields[F];
  };
}[Field];

/** One change to what is kept; every one can be undone. */
export type Amend =
  | SetField
  | {
      readonly do: "done-by";
      readonly record: RecordId;
      readonly from: string | null;
      readonly to: string | null;
    }
  | { readonly do: "remove"; readonly record: RecordId }
  /** What the last note folded into this record becomes a record of its own. */
  | { readonly do: "part"; readonly record: RecordId }
  /** The newer record becomes a word on the older one. */
  | { readonly do: "join"; readonly record: RecordId; readonly into: RecordId }
  | { readonly do: "use"; readonly entry: KeptUsage; readonly to: Usage }
  | { readonly do: "remove-use"; readonly entry: KeptUsage };

export type Amendment =
  | { readonly is: "amend"; readonly changes: readonly Amend[] }
  | { readonly is: "which"; readonly candidates: readonly RecordId[] }
  | {
      readonly is: "impossible";
      readonly why:
        | "nothing-said-yet"
        | "no-such-number"
        | "not-found"
        | "already-so"
        | "in-the-future"
        | "contradictory"
        | "nothing-to-join"
        | "already-removed";
    };
