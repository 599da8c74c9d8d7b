import type { KeptRecord } from "../history.ts";
import type { Answer } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { actionFit, doerFits, stuffFits } from "./fit.ts";
import { BY_NAME, type Ground, poolOf } from "./pool.ts";
import type { Query, Topic } from "./query.ts";
import { tellingStems } from "./words.ts";
import { putsIn } from "./work.ts";

/** Only what it is surely called, so that a "yes" is about the thing asked; stuff by itself names no thing. */
const surelyNamed = (topic: Topic): Topic => {
  const best = topic.named[0]?.sure ?? 0;
  if (topic.materials.length > 0 && best < 0.65) return { ...topic, named: [] };
  const least = best >= BY_NAME ? BY_NAME : Math.min(best, EITHER);
  return { ...topic, named: topic.named.filter(({ sure }) => sure >= least) };
};
/** "The front legs" may be either of two things. */
const EITHER = 0.55;

/** Words that go with any work. */
const LIGHT: ReadonlySet<string> = tellingStems("put get got give new brand had have take took one");

/** Kept under another action, but told in the verb asked with ("put a rubber plug in it"). */
const isToldSo = (ground: Ground, topic: Topic, record: KeptRecord): boolean => {
  const note = ground.history.note(record.noteId);
  if (note === undefined || note.recordIds.length > 1 || topic.verbs.length === 0) return false;
  const told = tellingStems(note.text);
  return topic.verbs.every((verb) =>
    [...tellingStems(verb)].some((stem) => !LIGHT.has(stem) && told.has(stem)),
  );
};

const isSuch = (ground: Ground, topic: Topic, record: KeptRecord): boolean => {
  const { kind, action } = record.fields;
  const looks = topic.actions.some((asked) => asked === "inspect" || asked === "test");
  if (kind !== "repair" && !(looks && kind === "check")) return false;
  if (!stuffFits(topic, record) || !doerFits(topic, record)) return false;
  if (topic.actions.length === 0 || actionFit(topic, record) === 2) return true;
  const swapped = putsIn(action) && topic.actions.some(putsIn);
  return swapped || isToldSo(ground, topic, record) || (action === "repair" && topic.actions.length > 1);
};

/** Was it ever done: yes with the newest such work first, or an honest no. */
export const answerEver = (ground: Ground, query: Extract<Query, { ask: "ever" }>): Answer => {
  const topic = surelyNamed(query.topic);
  const found = poolOf(ground, topic, { period: query.period }, (record) => isSuch(ground, topic, record));
  if (found.length > 0) return answerTo(query, { records: found, count: found.length, verdict: "yes" });
  return nothingFits(ground, query, { count: 0, verdict: "no" });
};
