import type { NoteId } from "../../shared/history.ts";
import type { InboxItem } from "../../store/inbox.ts";
import type { MediaKind } from "../../store/notes.ts";
import { localIso } from "../rig/rig.ts";
import type { Origin } from "./incoming.ts";
import type { Turn } from "./turn.ts";

/** Keeps what was said, word for word, before anything is made of it. */
export const keepNote = (
  turn: Turn,
  item: InboxItem,
  origin: Origin,
  text: string,
  media: MediaKind | null = null,
): NoteId => {
  const id = turn.store.notes.add({
    inboxId: item.id,
    ...turn.chat,
    messageId: origin.messageId,
    personId: turn.person.id,
    saidAt: localIso(origin.saidAt, turn.rig.zone),
    text,
    media: media === null ? null : { file: null, kind: media },
  });
  turn.store.turns.tells(turn.turnId, id);
  return id;
};
