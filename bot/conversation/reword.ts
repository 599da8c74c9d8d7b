import { Temporal } from "temporal-polyfill";
import type { InboxItem } from "../../store/inbox.ts";
import type { Incoming } from "./incoming.ts";
import { keepNote } from "./keep-note.ts";
import { respond } from "./respond.ts";
import type { Turn } from "./turn.ts";

/** An edited message is read again in place of what it said before. */
export const reword = (turn: Turn, item: InboxItem, incoming: Extract<Incoming, { is: "text" }>): void => {
  const { store, keeper, chat } = turn;
  const note = store.notes.ofMessage(chat.channel, chat.chatId, incoming.messageId);
  if (note === undefined) {
    const id = keepNote(turn, item, incoming, incoming.text);
    respond(turn, { id, said: incoming.saidAt, text: incoming.text }, incoming.replyTo);
    return;
  }
  if (note.text === incoming.text) return;
  const told = store.turns.ofNote(note.id);
  if (told !== undefined) keeper.undo(told);
  keeper.rewordNote(note.id, incoming.text);
  store.turns.tells(turn.turnId, note.id);
  respond(
    turn,
    { id: note.id, said: Temporal.Instant.from(note.saidAt), text: incoming.text },
    incoming.replyTo,
  );
};
