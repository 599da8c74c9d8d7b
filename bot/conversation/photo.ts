import type { InboxItem } from "../../store/inbox.ts";
import type { Incoming } from "./incoming.ts";
import { keepNote } from "./keep-note.ts";
import { respond } from "./respond.ts";
import type { Turn } from "./turn.ts";

/** A photo is kept with its note; the caption is read like any note. */
export const photo = (turn: Turn, item: InboxItem, incoming: Extract<Incoming, { is: "photo" }>): void => {
  const id = keepNote(turn, item, incoming, incoming.caption, "photo");
  turn.store.hearings.add(id, incoming.fileId, null, null);
  if (incoming.caption.trim() === "") {
    turn.say({
      text: "The photo is kept. Say what it shows, so that I can find it again.",
      shows: { noteId: id },
    });
    return;
  }
  respond(turn, { id, said: incoming.saidAt, text: incoming.caption }, incoming.replyTo);
};
