import { Temporal } from "temporal-polyfill";
import type { History, KeptRecord, KeptUsage, RecordId } from "../history.ts";
import type { Hemisphere } from "../reading.ts";
import type { RecordFields } from "../record.ts";
import { distanceTo, meantAmong, speaksAgainst } from "./amend-meant.ts";
import type { Correction } from "./correction.ts";
import { actionFit, stuffFits } from "./fit.ts";
import { DENIES, DIFFERS, gainsaysUse } from "./gainsay.ts";
import { comparePlaces } from "./place.ts";
import { poolOf } from "./pool.ts";
import type { Topic } from "./query.ts";
import type { Scene, Showing } from "./scene.ts";
import { shareAny, tellingStems } from "./words.ts";

export type Found =
  | { readonly found: readonly KeptRecord[]; readonly usage: readonly KeptUsage[] }
  | { readonly unclear: readonly KeptRecord[] }
  | { readonly missing: "nothing-said-yet" | "no-such-number" | "not-found" | "already-removed" };

type Where = { readonly history: History; readonly scene: Scene; readonly hemisphere: Hemisphere };

const NOTHING: Found = { missing: "nothing-said-yet" };

const keptIn = (history: History, ids: readonly RecordId[]): readonly KeptRecord[] =>
  ids.flatMap((id) => history.record(id) ?? []);

const alive = (records: readonly KeptRecord[]): Found => {
  const left = records.filter((record) => !record.removed);
  if (left.length > 0) return { found: left, usage: [] };
  return { missing: records.length > 0 ? "already-removed" : "not-found" };
};

const byNumber = ({ history, scene }: Where, numbers: readonly number[]): Found => {
  const showing = scene.replyTo ?? scene.shown ?? scene.last;
  if (showing === null) return NOTHING;
  const ids = numbers.flatMap((number) => showing.records[number - 1]?.id ?? []);
  return ids.length === numbers.length ? alive(keptIn(history, ids)) : { missing: "no-such-number" };
};

const isAbout = (topic: Topic, fields: RecordFields): boolean => {
  const place = comparePlaces(topic.where.join(" "), fields.where);
  if (topic.named.length === 0 && topic.words.length === 0) return place === "same";
  return (
    place !== "different" &&
    (topic.named.some(({ component, sure }) => sure >= 0.5 && component === fields.component) ||
      isPartOf(topic, fields))
  );
};

/** Named by a part or a stuff that went in: "the latch". */
const isPartOf = (topic: Topic, { materials, fault }: RecordFields): boolean =>
  (topic.named[0]?.sure ?? 0) < 0.7 &&
  shareAny(tellingStems(topic.all.join(" ")), tellingStems([...materials, fault ?? ""].join(" ")));

const fitOf = (topic: Topic, record: KeptRecord): number =>
  (comparePlaces(topic.where.join(" "), record.fields.where) === "same" ? 2 : 0) +
  (topic.actions.length > 0 ? actionFit(topic, record) : 0) +
  (topic.materials.length > 0 && stuffFits(topic, record) ? 2 : 0);

const bestFit = (topic: Topic, records: readonly KeptRecord[]): readonly KeptRecord[] =>
  [...records].sort((a, b) => fitOf(topic, b) - fitOf(topic, a)).slice(0, 1);

const byTopic = ({ history, scene, hemisphere }: Where, topic: Topic): Found => {
  const shown = [scene.replyTo, scene.last, scene.shown].flatMap((showing) => showing?.records ?? []);
  const near = shown.filter(({ fields }) => isAbout(topic, fields));
  if (near.length > 0) return alive(bestFit(topic, keptIn(history, [...new Set(near.map(({ id }) => id))])));
  if ((topic.named[0]?.sure ?? 0) < 0.5 && topic.where.length === 0) return { missing: "not-found" };
  return alive(bestFit(topic, poolOf({ history, hemisphere }, topic, { limit: 50 })));
};

/** Of what a message made and changed, what it made; an older record that it only spoke of is left alone. */
const newestOf = (records: readonly KeptRecord[]): readonly KeptRecord[] => {
  const newest = records.map(({ noteId }) => noteId).reduce((a, b) => Math.max(a, b), 0);
  return records.filter(({ noteId }) => noteId === newest);
};

/** What one message stated that may be put right. An answer states its first record, and others where the words deny them. */
type Stated = {
  readonly showing: Showing;
  readonly all: readonly KeptRecord[];
  readonly records: readonly KeptRecord[];
  readonly points: number;
};

const stateOf = ({ history }: Where, showing: Showing, correction: Correction): Stated => {
  const all = keptIn(
    history,
    showing.records.map(({ id }) => id),
  );
  const left = all.filter((record) => !record.removed);
  const records =
    showing.of === "note"
      ? newestOf(left)
      : left.filter((record, at) => at === 0 || speaksAgainst(record, correction) >= DENIES);
  const points = [
    0,
    ...records.map((record) => speaksAgainst(record, correction)),
    ...showing.usage.flatMap((entry) => correction.changes.map((change) => gainsaysUse(entry, change))),
  ];
  return { showing, all, records, points: Math.max(...points) };
};

const HOUR_MS = 3_600_000;

const instantOf = (showing: Showing): number => Temporal.Instant.from(showing.at).epochMilliseconds;

/** The messages that a correction may be about, the likeliest first: a look asked about is none, unless replied to. */
const showingsOf = ({ replyTo, last, shown }: Scene, correction: Correction): readonly Showing[] => {
  if (replyTo !== null) return [replyTo];
  if (last === null || shown === null || shown.of !== "answer" || instantOf(shown) <= instantOf(last))
    return [last ?? shown].filter((showing) => showing !== null);
  const takesAway = correction.changes.some(({ change }) => change === "remove");
  return takesAway && instantOf(shown) - instantOf(last) < HOUR_MS ? [last, shown] : [shown, last];
};

const nearer = (one: Stated, other: Stated, correction: Correction, hemisphere: Hemisphere): boolean => {
  const [a, b] = [one, other].map(({ records: [first] }) =>
    first === undefined ? undefined : distanceTo(first, correction, hemisphere),
  );
  return a !== undefined && b !== undefined && a < b;
};

/** The message whose stated value the correction can contradict; the nearest in value where several can. */
const statedIn = (where: Where, correction: Correction): Stated | undefined => {
  const stated = showingsOf(where.scene, correction).map((showing) => stateOf(where, showing, correction));
  const against = stated.filter(({ points }) => points >= DIFFERS);
  const [first, second] = against;
  if (first !== undefined && second !== undefined)
    return nearer(second, first, correction, where.hemisphere) ? second : first;
  return first ?? stated.find(({ showing }) => showing.of === "note") ?? stated[0];
};

const fromLast = (where: Where, correction: Correction): Found => {
  const stated = statedIn(where, correction);
  if (stated === undefined || stated.all.length + stated.showing.usage.length === 0) return NOTHING;
  const { usage } = stated.showing;
  if (stated.records.length === 0) return usage.length > 0 ? { found: [], usage } : alive(stated.all);
  const { meant, unclear } = meantAmong(stated.records, correction, where.hemisphere);
  return unclear ? { unclear: meant } : { found: meant, usage };
};

/** The records and entries of use that a correction is about, or why there are none. */
export const targetOf = (where: Where, correction: Correction): Found => {
  const { target } = correction;
  switch (target.by) {
    case "number":
      return byNumber(where, target.numbers);
    case "record":
      return alive(keptIn(where.history, [target.record]));
    case "topic":
      return byTopic(where, target.topic);
    case "last":
      return fromLast(where, correction);
  }
};
