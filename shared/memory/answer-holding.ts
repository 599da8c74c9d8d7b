import type { KeptRecord } from "../history.ts";
import type { Answer } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { actionFit, actionsLike, sharedCount, stuffFits, wordFit } from "./fit.ts";
import { type Ground, namesNothing, poolInWords, poolOf } from "./pool.ts";
import type { Query, Topic } from "./query.ts";
import { isOpen } from "./told.ts";
import { tellingStems } from "./words.ts";

/** What was replaced by later work is meant only when its own way or stuff is named. */
const TAKEN_OVER = 3.5;

const scoreOf = (ground: Ground, topic: Topic, record: KeptRecord): number => {
  const note = topic.words.length === 0 ? "" : (ground.history.note(record.noteId)?.text ?? "");
  const action = topic.actions.length === 0 ? 0 : 2 * actionFit(topic, record);
  const stuff = topic.materials.length > 0 && stuffFits(topic, record) ? 4 : 0;
  const taken = record.closedBy === null ? 0 : TAKEN_OVER;
  return action + stuff + Math.min(wordFit(topic, record, note), 4) - taken;
};

/** Words that stand in the notes of some of the fixes and not of others point at those. */
const TELLING = 4;

const tellingIn = (ground: Ground, topic: Topic, fixes: readonly KeptRecord[]): readonly number[] => {
  if (topic.words.length === 0) return fixes.map(() => 0);
  const counts = fixes.map((record) =>
    sharedCount(topic.words, tellingStems(ground.history.note(record.noteId)?.text ?? "")),
  );
  const least = Math.min(...counts);
  return counts.map((count) => TELLING * (count - least));
};

/** The fix that the words fit best; the newest among equals. */
const fixMeant = (ground: Ground, topic: Topic, all: readonly KeptRecord[]): KeptRecord | undefined => {
  const fixes = all.slice(0, 40);
  const telling = tellingIn(ground, topic, fixes);
  return fixes
    .map((record, at) => ({ record, points: scoreOf(ground, topic, record) + (telling[at] ?? 0) }))
    .sort((a, b) => b.points - a.points)[0]?.record;
};

/** As many pieces of work that took over from each other as are followed. */
const LONGEST_LINE = 12;

/** What has taken over from a fix by now, unless the stuff or the way asked about is of the fix itself. */
const asItIsNow = (ground: Ground, topic: Topic, fix: KeptRecord): KeptRecord => {
  let now = fix;
  for (let step = 0; step < LONGEST_LINE && now.closedBy !== null; step++) {
    const next = ground.history.record(now.closedBy);
    if (next === undefined || next.removed || next.fields.kind !== "repair") break;
    if (!stuffFits(topic, next) || actionFit(topic, next) === 0) break;
    now = next;
  }
  return now;
};

const STATES: Record<string, Answer["verdict"]> = {
  holding: "yes",
  untested: "yes",
  partly: "no",
  failed: "no",
};

const stateOf = (record: KeptRecord): Pick<Answer, "verdict" | "because"> => ({
  verdict: STATES[record.fields.outcome ?? "failed"] ?? "no",
  because: record.fields.outcome === "untested" ? "not-told-how-it-holds" : "found",
});

const newest = (one: KeptRecord, other: KeptRecord): number => other.id - one.id;

const specific = (topic: Topic): boolean => topic.actions.length > 0 || topic.materials.length > 0;

const saysHow = (record: KeptRecord): boolean => record.fields.kind !== "todo" || isOpen(record);

const aboutIt = (ground: Ground, topic: Topic): readonly KeptRecord[] => {
  const bare = namesNothing(topic) && topic.materials.length === 0;
  const named = bare ? [] : poolOf(ground, topic, {}, saysHow);
  if (named.length > 0) return named;
  const inWords = poolInWords(ground, topic).filter(saysHow);
  if (inWords.length > 0 || topic.actions.length === 0) return inWords;
  return poolOf(ground, topic, { actions: actionsLike(topic) }, (record) => actionFit(topic, record) === 2);
};

/**
 * The records that say how a thing does now, the one asked about first. Trouble found after the fix says more than the
 * fix, unless one fix was asked about.
 */
export const stateRecords = (
  ground: Ground,
  topic: Topic,
  order: "newest" | "oldest" = "newest",
): readonly KeptRecord[] => {
  const about = aboutIt(ground, topic);
  const fixes = about.filter((record) => record.fields.kind === "repair");
  const meant = order === "oldest" ? undefined : fixMeant(ground, topic, fixes);
  const fix = meant === undefined ? fixes.at(-1) : asItIsNow(ground, topic, meant);
  const trouble = about.filter(
    (record) => isOpen(record) && (record.fields.fault !== null || record.fields.kind === "fault"),
  );
  const checks = about.filter((record) => record.fields.kind === "check");
  if (fix === undefined) return [...[...trouble, ...checks].sort(newest), ...about].slice(0, 1);
  const later = trouble.filter((record) => record.id > fix.id);
  const spoiled =
    order === "newest" && !specific(topic) && later.length > 0 && fix.fields.outcome !== "failed";
  return spoiled ? [...later, fix] : [fix, ...later];
};

/** How is it doing? The state of the fix or of the thing itself. */
export const answerState = (ground: Ground, query: Extract<Query, { ask: "last" }>): Answer => {
  const records = stateRecords(ground, query.topic);
  const first = records[0];
  return first === undefined ? nothingFits(ground, query) : answerTo(query, { records, ...stateOf(first) });
};

/** Is it still holding? */
export const answerHolding = (ground: Ground, query: Extract<Query, { ask: "holding" }>): Answer => {
  const records = stateRecords(ground, query.topic, query.order);
  const first = records[0];
  if (first === undefined) return nothingFits(ground, query);
  return answerTo(query, { records, ...stateOf(first) });
};
