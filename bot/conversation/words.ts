import { sayDate } from "../../shared/edtf.ts";
import type { NoteId } from "../../shared/history.ts";
import type { Turn } from "./turn.ts";

/** Shows what was said, word for word, and plays it when it was a voice note. */
export const sayWords = (turn: Turn, noteId: NoteId): void => {
  const note = turn.store.notes.get(noteId);
  if (note === undefined) {
    turn.say({ text: "I don't have those words any more." });
    return;
  }
  const day = sayDate(note.saidAt.slice(0, 10), turn.today, turn.rig.hemisphere);
  if (note.media?.kind === "voice" && note.media.file !== null) turn.play(note.media.file);
  turn.say({ text: `${day}:\n“${note.text}”`, shows: { of: "answer", noteId } });
};
