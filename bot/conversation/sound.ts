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

const NO_WEIGHTS =
  "The voice note is kept, but I can't turn speech into words yet. Run “npm run model” once on the computer that I run on; then I listen to all that waits.";

const acknowledgement = ({ seconds }: SoundFile, ready: boolean): string => {
  if (!ready) return NO_WEIGHTS;
  return seconds === null
    ? "Got your voice note. Listening…"
    : `Got your voice note, ${sayLength(seconds)}. Listening…`;
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
  const reply = turn.say({ text: acknowledgement(incoming.sound, hears.ready()), shows: { noteId: id } });
  turn.store.hearings.add(id, incoming.sound.fileId, incoming.sound.seconds, reply);
};
