import type { KeptRecord, KeptUsage, NoteHit } from "../history.ts";
import type { AskKind, Lived, Query } from "./query.ts";

/** How long one way of fixing lasted; `held` when it holds to this day. */
export type Life = { readonly record: KeptRecord; readonly lived: Lived; readonly held: boolean };

/** The rig's use over a period, one figure a unit. */
export type UseTotal = {
  readonly unit: string;
  readonly count: number;
  readonly entries: readonly KeptUsage[];
};

/** An answer as data. A field that the question does not ask for is null or empty. */
export type Answer = {
  readonly kind: AskKind;
  readonly query: Query;
  /** Exactly the records that fit, the best first; the closest where none does and `because` says so. */
  readonly records: readonly KeptRecord[];
  readonly count: number | null;
  /** In the owner's own currency. */
  readonly cost: number | null;
  readonly verdict: "yes" | "no" | null;
  /** Notes whose words the answer rests on. */
  readonly notes: readonly NoteHit[];
  /** When nothing fits: the closest known things, the closest first. */
  readonly nearest: readonly KeptRecord[];
  /** For "open": fixes that let go, with nothing done since; neither todo nor fault. */
  readonly letGo: readonly KeptRecord[];
  /** For "longest": the longest (or shortest) first. */
  readonly lives: readonly Life[];
  readonly use: readonly UseTotal[];
  /** Why it is a no, or what the answer rests on. */
  readonly because:
    | "found"
    | "never-noted"
    | "only-planned"
    | "only-found-wrong"
    | "not-told-how-it-holds"
    | "nothing-open"
    /** Nothing is open on what seemed to be named; the list is of the rest. */
    | "open-elsewhere"
    | "no-cost-noted"
    | "unknown-thing"
    | "another-place"
    /** Nothing fits, and the closest is told: at another time, on its kin, other work on the thing itself. */
    | "another-time"
    | "kin"
    | "other-work";
};
