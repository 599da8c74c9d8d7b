import type { Field, RecordFields, Usage } from "./record.ts";

/** Character offsets into the note's text, end exclusive. */
export type Span = { readonly start: number; readonly end: number };

/** Why a field has its value: the words it rests on, how sure the reader is, and the rule that gave it. */
export type Evidence = {
  readonly spans: readonly Span[];
  /** 0 to 1: the share of such claims that should turn out right. */
  readonly sure: number;
  readonly rule: string;
};

/** A record as read from one note, before it is linked to what is known. */
export type Draft = {
  readonly fields: RecordFields;
  readonly evidence: Readonly<Partial<Record<Field, Evidence>>>;
  /** The stretch of the note that tells of this record. */
  readonly span: Span;
  /** Unknown names before a kind word, dropped from the material and kept here. */
  readonly brands: readonly string[];
  /** Who did the work when it was not the speaker ("the shop", "my son in law"). */
  readonly doneBy: string | null;
};

export type UsageDraft = {
  readonly usage: Usage;
  readonly span: Span;
  readonly sure: number;
  readonly rule: string;
};

export type Reading = { readonly records: readonly Draft[]; readonly usage: readonly UsageDraft[] };

/** What the reader must know about the moment of speaking. */
export type Moment = {
  /** ISO 8601 instant with offset. */
  readonly said: string;
  /** IANA zone of the speaker. */
  readonly zone: string;
  readonly hemisphere: Hemisphere;
};
export type Hemisphere = "north" | "south";
