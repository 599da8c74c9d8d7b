import type { RecordId } from "../history.ts";
import type { Edtf, UseUnit } from "../record.ts";
import type { ComponentId } from "../vocabulary.ts";
import type { Correction } from "./correction.ts";
import type { Query, Topic } from "./query.ts";

export type Setting =
  | { readonly set: "rig-name"; readonly to: string }
  | { readonly set: "zone"; readonly to: string }
  | { readonly set: "hemisphere"; readonly to: "north" | "south" }
  | { readonly set: "units"; readonly to: "miles" | "km" }
  /** Local hours 0 to 23 between which the phone stays quiet. */
  | { readonly set: "quiet-hours"; readonly from: number; readonly to: number }
  | { readonly set: "language"; readonly to: string };

/** Work of kept records done at another place, or to another thing, too, and what that cost. */
export type Again = {
  readonly records: readonly RecordId[];
  readonly where: string | null;
  /** Null: the same thing elsewhere. */
  readonly component: ComponentId | null;
  readonly cost: number | null;
};

/** What a message wants done. */
export type Purpose =
  /**
   * A note: the reader reads it, or `read` in its place, in which words that point back ("it") are spelled out. With
   * `again`, it is the work of those records done at another place too (see `workAgain`).
   */
  | {
      readonly is: "tell";
      readonly read: string | null;
      readonly again: Again | null;
      /** Older work that it is a word on. */
      readonly about: RecordId | null;
      /** The record that it goes on from, if it names nothing itself. */
      readonly after: RecordId | null;
      /** Older works that it may be a word on where it is not clear which, the likeliest first. */
      readonly maybe: readonly RecordId[];
    }
  | { readonly is: "ask"; readonly query: Query }
  /** Not `announced` as one in so many words, it may be a note after all, where there is nothing that it puts right. */
  | {
      readonly is: "correct";
      readonly correction: Correction;
      /** What else the same words put right, in other records. */
      readonly also?: readonly Correction[];
      readonly announced: boolean;
    }
  | { readonly is: "undo" }
  | { readonly is: "redo" }
  /** An answer to a nudge, or a word on what was just shown. */
  | {
      readonly is: "verdict";
      readonly outcome: "holding" | "partly" | "failed" | "later";
      readonly records: readonly RecordId[];
    }
  /** Which of the records asked about is meant: several of them, or none. */
  | { readonly is: "pick"; readonly records: readonly RecordId[] }
  /** Done, bought or not needed any more. Records when the scene says which, else by topic. */
  | {
      readonly is: "tick";
      readonly records: readonly RecordId[];
      readonly topic: Topic | null;
      readonly how: "done" | "dropped";
    }
  | {
      readonly is: "leave";
      readonly from: Edtf | null;
      readonly to: Edtf | null;
      readonly use: readonly { readonly count: number; readonly unit: UseUnit }[];
    }
  | { readonly is: "home" }
  /** Is it worth patching again? */
  | { readonly is: "decide"; readonly topic: Topic }
  /** Is the rig ready to go: the departure list. */
  | { readonly is: "ready" }
  | { readonly is: "show"; readonly what: "picture" | "logbook" | "table" | "calendar" | "backup" }
  | { readonly is: "set"; readonly setting: Setting }
  | { readonly is: "help" }
  /** Small talk: nothing to keep, nothing to answer. */
  | { readonly is: "chat"; readonly tone: "greeting" | "thanks" | "ok" | "wait" };

/** `rest`: the stretch of the message that is a note of its own, to be read as well. */
export type Intent = Purpose & { readonly rest: string | null };
