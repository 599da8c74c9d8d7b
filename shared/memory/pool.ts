import type { History, KeptRecord, RecordFilter } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import { type ComponentId, componentsOf } from "../vocabulary.ts";
import { kinOf } from "./families.ts";
import { placeFits, sharedCount, stuffFits } from "./fit.ts";
import { boundsOf, isDuring } from "./period.ts";
import { comparePlaces } from "./place.ts";
import type { Period, Topic } from "./query.ts";
import rooms from "./rooms.json" with { type: "json" };
import { plainWords, tellingStems } from "./words.ts";

/** What an answer is worked out from. */
export type Ground = { readonly history: History; readonly hemisphere: Hemisphere };

/** From here on, a thing is called by its name, and surely the one that is asked about. */
export const BY_NAME = 0.9;

/** Names as sure as this stand on one step; the next step is only taken when this one finds nothing. */
const STEPS: readonly number[] = [BY_NAME, 0.7, 0.4, 0];

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
  readonly actions?: RecordFilter["actions"] | undefined;
  readonly outcomes?: RecordFilter["outcomes"];
  /** The newest so many are looked at. */
  readonly limit?: number;
};

/** Far more work on one thing than a rig sees in years, and few enough to be looked through at once. */
const NEWEST = 60;

const look = (ground: Ground, topic: Topic, components: readonly ComponentId[] | undefined, how: Looked) => {
  const period = how.period ?? null;
  const filter: RecordFilter = {
    ...(components === undefined ? {} : { components }),
    ...(how.kinds === undefined ? {} : { kinds: how.kinds }),
    ...(how.actions === undefined ? {} : { actions: how.actions }),
    ...(how.outcomes === undefined ? {} : { outcomes: how.outcomes }),
    ...boundsOf(period),
    limit: how.limit ?? NEWEST,
  };
  return ground.history
    .records(filter)
    .filter((record) => placeFits(topic, record) && isDuring(record.fields.date, period, ground.hemisphere));
};

const hasOutcome = (record: KeptRecord, outcomes: RecordFilter["outcomes"]): boolean =>
  outcomes === undefined || (record.fields.outcome !== null && outcomes.includes(record.fields.outcome));

const ROOMS: ReadonlyMap<string, readonly string[]> = new Map(Object.entries(rooms.rooms));

/** The toilet is in the bathroom, though nobody says so. */
const isOfRoom = (where: string, component: ComponentId): boolean =>
  plainWords(where).some((word) => ROOMS.get(word)?.includes(component) === true);

/** Where only a place is said, what is known to be there before what may be anywhere. */
const thereFirst = (topic: Topic, records: readonly KeptRecord[]): readonly KeptRecord[] => {
  const where = topic.where.join(" ");
  const there =
    where === ""
      ? []
      : records.filter(
          ({ fields }) => comparePlaces(where, fields.where) === "same" || isOfRoom(where, fields.component),
        );
  return there.length > 0 ? there : records;
};

/** By the stuff or the place, where no thing is named; everything, where nothing is said at all. */
const unnamed = (ground: Ground, topic: Topic, how: Looked): readonly KeptRecord[] => {
  if (topic.materials.length === 0) return thereFirst(topic, look(ground, topic, undefined, how));
  const period = how.period ?? null;
  return recordsInWords(ground, { ...topic, all: [] }, HITS)
    .filter((record) => stuffFits(topic, record) && placeFits(topic, record))
    .filter((record) => how.kinds?.includes(record.fields.kind) !== false && hasOutcome(record, how.outcomes))
    .filter((record) => isDuring(record.fields.date, period, ground.hemisphere))
    .sort((a, b) => b.id - a.id);
};

/** How many notes are looked through for words. */
const HITS = 40;

/** Records of notes that hold most of the words asked: for things that no name fits. */
export const poolInWords = (ground: Ground, topic: Topic): readonly KeptRecord[] => {
  const least = Math.min(2, topic.all.length);
  if (least === 0) return [];
  return recordsInWords(ground, topic, HITS).filter((record) => {
    const note = ground.history.note(record.noteId)?.text ?? "";
    return placeFits(topic, record) && sharedCount(topic.all, tellingStems(note)) >= least;
  });
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
  if (namesNothing(topic)) return unnamed(ground, topic, how).filter(keep);
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
  const words = [...topic.all, ...topic.materials].join(" ");
  if (words === "") return [];
  const ids = ground.history.notes(words, limit).flatMap((hit) => hit.recordIds);
  return [...new Set(ids)]
    .flatMap((id) => ground.history.record(id) ?? [])
    .filter((record) => !record.removed);
};
