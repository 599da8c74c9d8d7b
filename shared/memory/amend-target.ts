import type { History, KeptRecord, RecordId } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { RecordFields } from "../record.ts";
import type { Correction } from "./correction.ts";
import { kinOf } from "./families.ts";
import { comparePlaces } from "./place.ts";
import { poolOf } from "./pool.ts";
import type { Topic } from "./query.ts";
import type { Scene, Showing } from "./scene.ts";

export type Found =
  | { readonly found: readonly KeptRecord[] }
  | { readonly missing: "nothing-said-yet" | "no-such-number" | "not-found" | "already-removed" };

type Where = { readonly history: History; readonly scene: Scene; readonly hemisphere: Hemisphere };

const NOTHING: Found = { missing: "nothing-said-yet" };

/** The message that the correction is about: the one replied to, else the last that made or changed something. */
export const showingOf = (scene: Scene): Showing | null => scene.replyTo ?? scene.last ?? scene.shown;

const keptIn = (history: History, ids: readonly RecordId[]): readonly KeptRecord[] =>
  ids.flatMap((id) => history.record(id) ?? []);

const alive = (records: readonly KeptRecord[]): Found => {
  const left = records.filter((record) => !record.removed);
  if (left.length > 0) return { found: left };
  return { missing: records.length > 0 ? "already-removed" : "not-found" };
};

const byNumber = ({ history, scene }: Where, numbers: readonly number[]): Found => {
  const showing = scene.replyTo ?? scene.shown ?? scene.last;
  if (showing === null) return NOTHING;
  const ids = numbers.flatMap((number) => showing.records[number - 1]?.id ?? []);
  return ids.length === numbers.length ? alive(keptIn(history, ids)) : { missing: "no-such-number" };
};

const isAbout = (topic: Topic, fields: RecordFields): boolean =>
  topic.named.length === 0
    ? comparePlaces(topic.where.join(" "), fields.where) === "same"
    : topic.named.some(({ component, sure }) => sure >= 0.7 && component === fields.component);

const byTopic = ({ history, scene, hemisphere }: Where, topic: Topic): Found => {
  const shown = [scene.replyTo, scene.last, scene.shown].flatMap((showing) => showing?.records ?? []);
  const near = shown.filter(({ fields }) => isAbout(topic, fields));
  if (near.length > 0) return alive(keptIn(history, [...new Set(near.map(({ id }) => id))].slice(0, 1)));
  return alive(poolOf({ history, hemisphere }, topic, { limit: 50 }).slice(0, 1));
};

const isRuledOut = (record: KeptRecord, not: Partial<RecordFields>): boolean =>
  (Object.entries(not) as [keyof RecordFields, unknown][]).some(
    ([field, value]) => JSON.stringify(record.fields[field]) === JSON.stringify(value),
  );

const componentTold = (correction: Correction) =>
  correction.changes.flatMap((change) => (change.change === "fields" ? (change.to.component ?? []) : []))[0];

/** Of what a message made and changed, what it made; an older record that it only spoke of is left alone. */
const newestOf = (records: readonly KeptRecord[]): readonly KeptRecord[] => {
  const newest = records.map(({ noteId }) => noteId).reduce((a, b) => Math.max(a, b), 0);
  return records.filter(({ noteId }) => noteId === newest);
};

/** Among several records of one message, the one whose value the words deny, or that a new name is closest to. */
const meantAmong = (records: readonly KeptRecord[], correction: Correction): readonly KeptRecord[] => {
  const denied = records.filter((record) => isRuledOut(record, correction.not));
  if (denied.length > 0) return denied;
  const component = componentTold(correction);
  if (component === undefined) return records;
  const kin = records.filter((record) => kinOf(component).includes(record.fields.component));
  return kin.length > 0 ? kin.slice(-1) : records.slice(-1);
};

const fromLast = (where: Where, correction: Correction): Found => {
  const showing = showingOf(where.scene);
  if (showing === null || showing.records.length + showing.usage.length === 0) return NOTHING;
  const all = alive(
    keptIn(
      where.history,
      showing.records.map(({ id }) => id),
    ),
  );
  return "found" in all ? { found: meantAmong(newestOf(all.found), correction) } : all;
};

/** The records that a correction is about, or why there are none. */
export const targetOf = (where: Where, correction: Correction): Found => {
  switch (correction.target.by) {
    case "number":
      return byNumber(where, correction.target.numbers);
    case "topic":
      return byTopic(where, correction.target.topic);
    case "last":
      return fromLast(where, correction);
  }
};
