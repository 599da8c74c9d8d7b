import type { Action } from "../../shared/vocabulary.ts";
import type { VerdictEntry } from "../lexicon/lexicon.ts";
import type { MaterialRef } from "../lexicon/materials.ts";
import type { Hit } from "../lexicon/pattern.ts";
import type { Amount } from "./amount.ts";
import type { Clause } from "./clauses.ts";
import type { Deed } from "./deed.ts";
import type { Scan, TimeRef } from "./scan.ts";
import type { Topic } from "./topics.ts";

export type EventKind = "work" | "look" | "plan" | "undone";

/** One piece of work (or look, plan, work left undone) on one topic. */
export type Event = {
  readonly kind: EventKind;
  action: Action;
  readonly deeds: Deed[];
  /** From after the event before to before the event after. */
  from: number;
  to: number;
  /** "did the other side too": all else like this one. */
  readonly like: Like | null;
};

/** A piece of work and what was told of it, for another one like it. */
export type Like = { readonly event: Event; readonly told: Told };

/** All that was said within the stretches of one topic. */
export type Told = {
  readonly topic: Topic;
  readonly deeds: readonly Deed[];
  readonly verdicts: readonly Hit<VerdictEntry>[];
  readonly faults: readonly Hit<number>[];
  readonly times: readonly TimeRef[];
  readonly amounts: readonly Amount[];
  readonly materials: readonly MaterialRef[];
  /** Where "again" is said. */
  readonly again: readonly number[];
};

export type Context = {
  readonly scan: Scan;
  readonly clauses: readonly Clause[];
  readonly index: Int32Array;
  readonly dead: Uint8Array;
};
