import type { KeptUsage, RecordId } from "../history.ts";
import type { RecordFields } from "../record.ts";
import type { Query } from "./query.ts";

/** A record as it was shown; its place in the list is its number, from 1. */
export type Shown = {
  readonly id: RecordId;
  readonly fields: RecordFields;
  /** The note that told it. */
  readonly words?: string;
};

/** What one message showed. */
export type Showing = {
  /** ISO 8601 instant. */
  readonly at: string;
  /** `note`: made or changed by what the owner said; `answer`: shown on asking; `nudge`: shown unasked. */
  readonly of: "note" | "answer" | "nudge";
  readonly records: readonly Shown[];
  readonly usage: readonly KeptUsage[];
};

/** What the bot waits for. */
export type Pending =
  | { readonly is: "nudge"; readonly records: readonly RecordId[] }
  | { readonly is: "which-record"; readonly candidates: readonly Shown[] }
  | { readonly is: "settle-field"; readonly record: RecordId; readonly choices: readonly string[] };

/** What the conversation just showed, for understanding what a short message means here. */
export type Scene = {
  /** The last message that made or changed something; none right after a note in which nothing was found, if that was long before. */
  readonly last: Showing | null;
  /** The last message of any kind with records in it. */
  readonly shown: Showing | null;
  /** The message that this one replies to. */
  readonly replyTo: Showing | null;
  /** Records told of at any time that the message may be about, by what it names; newest first. */
  readonly older: readonly Shown[];
  /** The latest records of the things that the message seems to speak of, by whatever words. */
  readonly spokenOf: readonly Shown[];
  readonly pending: Pending | null;
  /** The question before this one, while it is fresh. */
  readonly asked: Query | null;
  /** The last question, however old, when nothing was told since. */
  readonly askedEarlier: Query | null;
};

export const EMPTY_SCENE: Scene = {
  last: null,
  shown: null,
  replyTo: null,
  older: [],
  spokenOf: [],
  pending: null,
  asked: null,
  askedEarlier: null,
};
