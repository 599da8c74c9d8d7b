import type { Temporal } from "temporal-polyfill";
import type { History, KeptRecord } from "../history.ts";
import type { Draft, Hemisphere, Moment, Span } from "../reading.ts";
import type { LinkStep } from "./link-plan.ts";
import { comparePlaces } from "./place.ts";
import { dayOf } from "./when.ts";

/** One draft with the words that it was read from, and what is known when it is told. */
export type Told = {
  readonly draft: Draft;
  readonly index: number;
  /** The stretch of the note. */
  readonly words: string;
  /** Those of them right round what the thing, the work and the outcome were read from. */
  readonly close: string;
  /** Those of them before the work is told. */
  readonly leadUp: string;
  /** What its thing is called there. */
  readonly called: string;
  readonly said: string;
  readonly today: Temporal.PlainDate;
  readonly hemisphere: Hemisphere;
};

/** What a draft is linked against. */
export type Against = {
  /** What is kept about its thing. */
  readonly kept: readonly KeptRecord[];
  /** The steps of the same note before it. */
  readonly before: readonly LinkStep[];
  /** The work that it is a word on, where that is known. */
  readonly meant: KeptRecord | undefined;
};

/** How far back a thing's own records are looked through. */
const REACH = 60;

/** The words between two drafts lead up to the second; what follows the last belongs to it. */
const stretchOf = (drafts: readonly Draft[], index: number, text: string): Span => {
  const own = drafts[index]?.span ?? { start: 0, end: text.length };
  const before = drafts[index - 1]?.span.end ?? 0;
  const end = index === drafts.length - 1 ? text.length : own.end;
  return { start: Math.min(before, own.start), end };
};

const startOf = ({ evidence: { action } }: Draft): number =>
  Math.min(...(action?.spans ?? []).map(({ start }) => start));

/** Letters before and after the words that a field was read from. */
const [BEFORE, AFTER] = [40, 50];

const closeTo = ({ evidence }: Draft, text: string, words: string): string => {
  const spans = (["component", "action", "outcome"] as const).flatMap(
    (field) => evidence[field]?.spans ?? [],
  );
  if (spans.length === 0) return words;
  const from = Math.min(...spans.map(({ start }) => start)) - BEFORE;
  const to = Math.max(...spans.map(({ end }) => end)) + AFTER;
  return text.slice(Math.max(0, from), to);
};

export const toldOf = (drafts: readonly Draft[], draft: Draft, text: string, moment: Moment): Told => {
  const index = drafts.indexOf(draft);
  const stretch = stretchOf(drafts, index, text);
  const words = text.slice(stretch.start, stretch.end);
  const done = startOf(draft);
  return {
    draft,
    index,
    words,
    close: closeTo(draft, text, words),
    leadUp: Number.isFinite(done) ? text.slice(stretch.start, Math.max(stretch.start, done)) : "",
    called: (draft.evidence.component?.spans ?? []).map(({ start, end }) => text.slice(start, end)).join(" "),
    said: moment.said,
    today: dayOf(moment),
    hemisphere: moment.hemisphere,
  };
};

/** What is kept about the thing told of, newest first, other places of it left out. */
export const keptAbout = (told: Told, history: History): readonly KeptRecord[] =>
  history
    .records({ components: [told.draft.fields.component], limit: REACH })
    .filter((kept) => comparePlaces(told.draft.fields.where, kept.fields.where) !== "different");

/** Work that nothing has taken over from yet. */
export const isLive = (kept: KeptRecord): boolean =>
  kept.fields.kind === "repair" && kept.closedBy === null && !kept.removed;

export const isOpen = (kept: KeptRecord): boolean =>
  (kept.fields.kind === "todo" || kept.fields.kind === "fault") &&
  kept.closedBy === null &&
  !kept.settled &&
  !kept.removed;
