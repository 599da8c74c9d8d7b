import type { InboxItem } from "../../store/inbox.ts";
import type { Incoming, SoundFile } from "./incoming.ts";
import { keepNote } from "./keep-note.ts";
import type { Turn } from "./turn.ts";

/** Whether voice notes can be turned into words on this machine now. */
export type Hears = { readonly ready: () => boolean };

const LONGEST_SECONDS = 30 * 60;
const LARGEST_BYTES = 20 * 1024 * 1024;

const tooMuch = ({ seconds, bytes }: SoundFile): string | undefined => {
  if (seconds !== null && seconds > LONGEST_SECONDS)
    return "That is longer than half an hour. Send it in shorter pieces, please.";
  if (bytes !== null && bytes > LARGEST_BYTES)
    return "That file is larger than 20 MB. Send it in shorter pieces, please.";
  return undefined;
};

/** "1:42" */
export const sayLength = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(Math.round(seconds % 60)).padStart(2, "0")}`;

const NO_WEIGHTS_YET = (count: number): string =>
  `${count === 1 ? "The voice note is" : `${count} voice notes are`} kept, but I can't turn speech into words yet. Run “npm run model” once on the computer that I run on; then I listen to all that waits.`;

const acknowledgement = ({ seconds }: SoundFile): string =>
  seconds === null || seconds === 0
    ? "Got your voice note. Listening…"
    : `Got your voice note, ${sayLength(seconds)}. Listening…`;

/** A note that comes while others wait shares their reply: many notes sent at once are answered as one. */
const shareReply = (turn: Turn, hears: Hears): number | undefined => {
  const reply = turn.store.hearings.waitingReply(turn.chat);
  if (reply === undefined) return undefined;
  const count = turn.store.hearings.sharing(reply).length + 1;
  const text = hears.ready()
    ? `Got ${count} voice notes. Listening to them in the order you recorded them…`
    : NO_WEIGHTS_YET(count);
  turn.edit(reply, { text });
  return reply;
};

/** A voice note is acknowledged at once; its words follow in the same message. */
export const sound = (
  turn: Turn,
  item: InboxItem,
  incoming: Extract<Incoming, { is: "sound" }>,
  hears: Hears,
): void => {
  const id = keepNote(turn, item, incoming, incoming.caption, "voice");
  const refusal = tooMuch(incoming.sound);
  if (refusal !== undefined) {
    turn.say({ text: refusal });
    return;
  }
  const reply =
    shareReply(turn, hears) ??
    turn.say({
      text: hears.ready() ? acknowledgement(incoming.sound) : NO_WEIGHTS_YET(1),
      shows: { noteId: id },
    });
  turn.store.hearings.add(id, incoming.sound.fileId, incoming.sound.seconds, reply);
};
