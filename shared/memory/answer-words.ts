import type { KeptRecord, NoteHit } from "../history.ts";
import type { Answer } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { type Ground, poolOf, recordsInWords } from "./pool.ts";
import type { Query } from "./query.ts";

const MANY = 8;

const once = (hits: readonly NoteHit[]): readonly NoteHit[] => [
  ...new Map(hits.map((hit) => [hit.noteId, hit])).values(),
];

const recordsOf = ({ history }: Ground, notes: readonly NoteHit[]): readonly KeptRecord[] =>
  notes
    .flatMap(({ recordIds }) => recordIds)
    .flatMap((id) => history.record(id) ?? [])
    .filter((record) => !record.removed)
    .slice(0, MANY);

/** What was said about it: the notes of its records, then notes with the words. */
export const answerSaid = (ground: Ground, query: Extract<Query, { ask: "said" }>): Answer => {
  const { topic, period } = query;
  const named = topic.named.length + topic.systems.length > 0;
  const records = named
    ? poolOf(ground, topic, { period, limit: MANY })
    : recordsInWords(ground, topic, MANY);
  const own = records.flatMap((record) => ground.history.note(record.noteId) ?? []);
  const words = [...topic.words, ...topic.materials].join(" ");
  const found = named && own.length > 0 ? [] : ground.history.notes(words, MANY);
  const notes = once([...own, ...found]).slice(0, MANY);
  const told = records.length > 0 ? records : recordsOf(ground, notes);
  return notes.length > 0 ? answerTo(query, { records: told, notes }) : nothingFits(ground, query);
};
