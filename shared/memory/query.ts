import type { Exposure, UseUnit } from "../record.ts";
import type { Action, ComponentId, SystemId } from "../vocabulary.ts";

/** A component that words may mean; `sure` from 0 to 1: 1 is its own name, less a nickname or a neighbour. */
export type Named = { readonly component: ComponentId; readonly sure: number };

/** What a question or a correction is about. Nothing given in a field means that nothing was said about it. */
export type Topic = {
  /** Best first, each component once. */
  readonly named: readonly Named[];
  readonly systems: readonly SystemId[];
  /** Any of them. */
  readonly actions: readonly Action[];
  /** Place words, lower case, without articles: ["left", "rear"]. */
  readonly where: readonly string[];
  readonly materials: readonly string[];
  /** Who did the work, as said: "dealer", or one of the two below. */
  readonly who: string | null;
  /** The words that told the actions. */
  readonly verbs: readonly string[];
  /** What else was said that may stand in a note: the trouble, a part, a person. */
  readonly words: readonly string[];
  /** Every telling word, names included, for full-text search. */
  readonly all: readonly string[];
};

/** The one who asks; anyone else. */
export const SPEAKER_DID = "me";
export const OTHERS_DID = "others";

/** Nothing said: the whole rig. */
export const EMPTY_TOPIC: Topic = {
  named: [],
  systems: [],
  actions: [],
  where: [],
  materials: [],
  who: null,
  verbs: [],
  words: [],
  all: [],
};

/** Civil days, ISO; `to` exclusive; null is open. `said` is the phrase it was understood from. */
export type Period = { readonly from: string | null; readonly to: string | null; readonly said: string };

/** What the asker wants to know of the record that fits best; only the wording of the reply depends on it. */
export type Focus =
  | "what"
  | "when"
  | "how-long-ago"
  | "materials"
  | "who"
  | "why"
  | "cost"
  | "state"
  | "place"
  /** What made the trouble stop. */
  | "cure";

/** One of several tries at a trouble: by its number in time, or the one before such work (before the newest, where none is named). */
export type Attempt = { readonly nth: number } | { readonly before: readonly Action[] };

export type Query =
  /** The newest (or first) work that fits. */
  | {
      readonly ask: "last";
      readonly topic: Topic;
      readonly period: Period | null;
      readonly focus: Focus;
      readonly order: "newest" | "oldest";
      readonly attempt?: Attempt;
    }
  /** All work that fits: in a period, on a component or a system. */
  | { readonly ask: "list"; readonly topic: Topic; readonly period: Period | null }
  /** Was it ever done? */
  | { readonly ask: "ever"; readonly topic: Topic; readonly period: Period | null }
  /** How many times it failed, or was done. */
  | {
      readonly ask: "count";
      readonly of: "failures" | "work";
      readonly topic: Topic;
      readonly period: Period | null;
    }
  /** Is it still holding? */
  | { readonly ask: "holding"; readonly topic: Topic; readonly order: "newest" | "oldest" }
  /** Todos and faults not dealt with. */
  | { readonly ask: "open"; readonly topic: Topic; readonly period: Period | null }
  | { readonly ask: "buy"; readonly topic: Topic }
  /** The money in all, or what was dearest. */
  | {
      readonly ask: "cost";
      readonly topic: Topic;
      readonly period: Period | null;
      readonly of: "all" | "dearest";
    }
  /** Which way of fixing lasted longest, and how long each lasted. */
  | { readonly ask: "longest"; readonly topic: Topic; readonly order: "longest" | "shortest" }
  /** What was said about it, in the words of the notes. */
  | { readonly ask: "said"; readonly topic: Topic; readonly period: Period | null }
  /** How the rig was used. Unit null: everything logged. */
  | {
      readonly ask: "use";
      readonly unit: UseUnit | null;
      readonly meter: boolean;
      readonly period: Period | null;
    }
  /** What is due for a look, now or by a day. */
  | { readonly ask: "due"; readonly topic: Topic; readonly period: Period | null }
  /** What keeps failing, over the whole rig. */
  | { readonly ask: "worst"; readonly topic: Topic; readonly period: Period | null };

export type AskKind = Query["ask"];

/** How much a fix went through, as told or as logged; `seen` when somebody said how it did, or did it anew. */
export type Lived = {
  readonly days: number | null;
  readonly exposure: readonly Exposure[];
  readonly seen: boolean;
};
