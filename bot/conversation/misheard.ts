import { Temporal } from "temporal-polyfill";
import type { ToldNote } from "./told.ts";
import type { Turn } from "./turn.ts";

const I_SAID =
  /^(?:no|nope|wrong|sorry)?[\s,.!]*(?:that's not what i said[\s,.!]*)?i said[\s,:]+(\S[\s\S]*)$/i;

type Respond = (turn: Turn, note: ToldNote, replyTo: number | null) => void;

/** "No, I said …" puts the words of the last voice note right and reads them again. */
export const misheard = (turn: Turn, note: ToldNote, respond: Respond): boolean => {
  const words = I_SAID.exec(note.text.trim())?.[1]?.trim();
  const shown =
    turn.store.outbox.lastShown(turn.chat.channel, turn.chat.chatId, "note")?.shows.noteId ?? null;
  const last = shown === null ? undefined : turn.store.notes.get(shown);
  if (words === undefined || last?.media?.kind !== "voice") return false;
  const told = turn.store.turns.ofNote(last.id);
  if (told !== undefined) turn.keeper.undo(told);
  turn.keeper.rewordNote(last.id, words);
  turn.store.turns.tells(turn.turnId, last.id);
  respond(turn, { id: last.id, said: Temporal.Instant.from(last.saidAt), text: words }, null);
  return true;
};
