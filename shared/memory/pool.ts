import type { History, KeptRecord, RecordFilter } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import { type ComponentId, componentsOf } from "../vocabulary.ts";
import { kinOf } from "./families.ts";
import { placeFits } from "./fit.ts";
import { boundsOf, isDuring } from "./period.ts";
import type { Period, Topic } from "./query.ts";

/** What an answer is worked out from. */
export type Ground = { readonly history: History; readonly hemisphere: Hemisphere };

/** Names as sure as this stand on one step; the next step is only taken when this one finds nothing. */
const STEPS: readonly number[] = [0.9, 0.7, 0.4, 0];

/** The components that may be meant, in steps from the surest. Empty when no thing was named. */
export const stepsOf = (topic: Topic): readonly (readonly ComponentId[])[] => {
  const named = STEPS.map((least, at) =>
    topic.named
      .filter(({ sure }) => sure >= least && (at === 0 || sure < (STEPS[at - 1] ?? 1)))
      .map(({ component }) => component),
  ).filter((step) => step.length > 0);
  const systems = topic.systems.flatMap(componentsOf);
  return systems.length > 0 ? [systems, ...named] : named;
};

export const namesNothing = (topic: Topic): boolean => topic.named.length === 0 && topic.systems.length === 0;

type Looked = {
  readonly period?: Period | null;
  readonly kinds?: RecordFilter["kinds"];
  readonly limit?: number;
};

const look = (ground: Ground, topic: Topic, components: readonly ComponentId[] | undefined, how: Looked) => {
  const period = how.period ?? null;
  const filter: RecordFilter = {
    ...(components === undefined ? {} : { components }),
    ...(how.kinds === undefined ? {} : { kinds: how.kinds }),
    ...boundsOf(period),
    limit: how.limit ?? 200,
  };
  return ground.history
    .records(filter)
    .filter((record) => placeFits(topic, record) && isDuring(record.fields.date, period, ground.hemisphere));
};

/**
 * The records of the thing asked about, newest first. `keep` says which of them would answer; the first step of names
 * with any such is taken. Without a named thing all records are looked at.
 */
export const poolOf = (
  ground: Ground,
  topic: Topic,
  how: Looked,
  keep: (record: KeptRecord) => boolean = () => true,
): readonly KeptRecord[] => {
  if (namesNothing(topic)) return look(ground, topic, undefined, how).filter(keep);
  for (const step of stepsOf(topic)) {
    const found = look(ground, topic, step, how).filter(keep);
    if (found.length > 0) return found;
  }
  return [];
};

/** The closest known things when nothing fits: the thing itself in any state, then its kin, then notes with the words. */
export const nearestTo = (ground: Ground, topic: Topic, limit = 3): readonly KeptRecord[] => {
  const components = topic.named.map(({ component }) => component);
  const own = components.length === 0 ? [] : ground.history.records({ components, limit });
  if (own.length > 0) return own;
  const kin = components.flatMap(kinOf);
  const near = kin.length === 0 ? [] : ground.history.records({ components: kin, limit });
  return near.length > 0 ? near : recordsInWords(ground, topic, limit);
};

/** Records of notes in which the words of the question stand, the best note first. */
export const recordsInWords = (ground: Ground, topic: Topic, limit: number): readonly KeptRecord[] => {
  const words = [...topic.words, ...topic.materials, ...topic.where].join(" ");
  if (words === "") return [];
  const ids = ground.history.notes(words, limit).flatMap((hit) => hit.recordIds);
  return [...new Set(ids)]
    .flatMap((id) => ground.history.record(id) ?? [])
    .filter((record) => !record.removed);
};
