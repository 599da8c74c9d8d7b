import type { KeptRecord } from "../history.ts";
import { ACTIONS, type Action } from "../vocabulary.ts";
import table from "./kin-actions.json" with { type: "json" };
import { compareMaterials, isSuchStuff } from "./materials.ts";
import { particularsOf } from "./part.ts";
import { comparePlaces } from "./place.ts";
import { OTHERS_DID, SPEAKER_DID, type Topic } from "./query.ts";
import { plainWords, stemOf, tellingStems } from "./words.ts";

const KIN: readonly (readonly string[])[] = table.kin;

/** Whether people name one for the other. */
export const areKin = (one: Action | null, other: Action | null): boolean =>
  one !== null && other !== null && KIN.some((group) => group.includes(one) && group.includes(other));

/** 2 the action asked for, 1 one that people say for it, 0 another. */
export const actionFit = (topic: Topic, record: Pick<KeptRecord, "fields">): 0 | 1 | 2 => {
  const { action } = record.fields;
  if (topic.actions.length === 0) return 2;
  if (action === null) return 0;
  if (topic.actions.includes(action)) return 2;
  return action === "repair" || topic.actions.some((asked) => areKin(asked, action)) ? 1 : 0;
};

/** The actions that may answer, for looking up; undefined when none was asked about. */
export const actionsLike = ({ actions }: Topic): readonly Action[] | undefined =>
  actions.length === 0
    ? undefined
    : ACTIONS.filter(
        (action) => action === "repair" || actions.some((asked) => asked === action || areKin(asked, action)),
      );

export const placeFits = (topic: Topic, record: KeptRecord): boolean =>
  topic.where.length === 0 || comparePlaces(topic.where.join(" "), record.fields.where) !== "different";

/** How many of the words stand among the stems. */
export const sharedCount = (words: readonly string[], stems: ReadonlySet<string>): number =>
  words.filter((word) => stems.has(stemOf(word))).length;

/** How much of what else was asked comes up in the record: its place, stuff, trouble and note words. */
export const wordFit = (topic: Topic, record: KeptRecord, note = ""): number => {
  const about = particularsOf(record.fields).all;
  const place = comparePlaces(topic.where.join(" "), record.fields.where) === "same" ? 2 : 0;
  const stuff = compareMaterials(topic.materials, record.fields.materials) === "same" ? 3 : 0;
  const told = sharedCount([...topic.words, ...topic.where], about);
  return place + stuff + told + 0.5 * sharedCount(topic.words, tellingStems(note));
};

/** Whether the stuff asked about is the stuff that went in; true when none was asked about. */
export const stuffFits = (topic: Topic, record: Pick<KeptRecord, "fields">): boolean =>
  topic.materials.length === 0 ||
  topic.materials.some((asked) => record.fields.materials.some((kept) => isSuchStuff(asked, kept)));

/** Whether it was done by the one asked about; true when nobody was. */
export const doerFits = ({ who }: Topic, { doneBy }: KeptRecord): boolean => {
  if (who === null) return true;
  if (who === SPEAKER_DID) return doneBy === null;
  return doneBy !== null && (who === OTHERS_DID || plainWords(doneBy).includes(who));
};

/** Whether a name in the question is that of the one who told or did it. */
export const isTheirs = (topic: Topic, record: KeptRecord): boolean => {
  const names = plainWords(`${record.saidBy} ${record.doneBy ?? ""}`);
  return topic.words.some((word) => names.includes(word));
};
