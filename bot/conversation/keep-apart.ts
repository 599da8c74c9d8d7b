import { Temporal } from "temporal-polyfill";
import { read } from "../../nlp/read/index.ts";
import type { RecordId } from "../../shared/history.ts";
import { momentOf } from "../rig/rig.ts";
import type { Turn } from "./turn.ts";

/** What the last note folded into this record is read again and kept as a record of its own. */
export const keepApart = (turn: Turn, record: RecordId): readonly RecordId[] => {
  const { store, keeper, rig } = turn;
  const older = store.history.record(record);
  const verdict = older?.verdicts.at(-1);
  const note = verdict?.noteId == null ? undefined : store.notes.get(verdict.noteId);
  if (older === undefined || note === undefined) return [];
  const folding = store.turns.ofNote(note.id);
  if (folding !== undefined) keeper.undo(folding);
  const drafts = read(note.text, momentOf(Temporal.Instant.from(note.saidAt), rig)).records;
  return [record, ...drafts.map((draft) => keeper.addRecord(note.id, note.saidAt, draft, "new"))];
};
