import { Temporal } from "temporal-polyfill";
import type { Heard, HearFailure } from "../../nlp/hear/heard.ts";
import type { Hearing } from "../../store/hearings.ts";
import type { StoredNote } from "../../store/notes.ts";
import type { Store } from "../../store/store.ts";
import { shortened } from "../replies/words.ts";
import { beginTurn } from "./begin-turn.ts";
import { respond } from "./respond.ts";
import type { Turn } from "./turn.ts";

const NO_WORDS = "I heard no words in that one. The sound is kept; say it again or type it.";

/** Why a note has no words, and what to do about it. */
const WHY_NOT: Record<HearFailure["tag"], string> = {
  "too-large": "That file is larger than 20 MB. Send it in shorter pieces, please.",
  "too-long": "That is longer than half an hour. Send it in shorter pieces, please.",
  empty: "That file is empty. Nothing was lost on my side; please send it again.",
  "not-audio": "I can't find any sound in that file. It is kept; voice notes, WAV, MP3 and M4A work.",
  truncated: "That sound file is cut short, so I can't trust its words. It is kept; please send it again.",
  unsupported:
    "I can't read that kind of sound file here. It is kept; with the program ffmpeg installed on my computer I can.",
  damaged: "That sound file is damaged. It is kept; please send it again.",
  "no-file": "I can't find that sound any more. Please send it again.",
  "no-model":
    "I can't turn speech into words yet. The sound is kept; run “npm run model” on the computer that I run on.",
  "timed-out":
    "Listening to that one took too long. The sound is kept; please type it, or send it in shorter pieces.",
  "out-of-memory":
    "There was not enough memory to listen to that one. The sound is kept; shorter pieces will work.",
  crashed: "Listening to that one broke down twice. The sound is kept; please type it or send it again.",
  closed: "I was stopped while listening. The sound is kept.",
};

type Parts = { readonly store: Store; readonly now: Temporal.Instant };

const turnFor = ({ store, now }: Parts, note: StoredNote): Turn | undefined =>
  beginTurn(store, note.inboxId, { channel: note.channel, chatId: note.chatId }, now);

/** Writes down what came of one note; the last of several that share a reply gives the summary of all. */
const finish = (
  turn: Turn,
  hearing: Hearing,
  state: "heard" | "unheard",
  text: string,
  records: number[],
): void => {
  const { hearings } = turn.store;
  hearings.finish(hearing.noteId, state, { text, records });
  if (hearing.reply === null) return void turn.say({ text, shows: { records } });
  const all = hearings.sharing(hearing.reply);
  const done = all.flatMap(({ outcome }) => outcome ?? []);
  if (done.length < all.length)
    return void turn.edit(hearing.reply, {
      text: `Listening: ${done.length} of ${all.length} voice notes are through.`,
    });
  const lines = done.map((each, index) => `${index + 1}. ${each.text}`);
  turn.edit(hearing.reply, {
    text: `All ${all.length} voice notes are down.\n\n${lines.join("\n\n")}`,
    shows: { of: "note", records: done.flatMap((each) => each.records) },
  });
};

const isAlone = ({ store }: Parts, hearing: Hearing): boolean =>
  hearing.reply === null || store.hearings.sharing(hearing.reply).length === 1;

const QUOTE_LENGTH = 160;

/** Reads the words of a voice note like any note; the reply stands under the words that were heard. */
const tellHeard = (
  turn: Turn,
  parts: Parts,
  hearing: Hearing,
  note: StoredNote,
  { text, hypothesis }: Heard,
): void => {
  const { store } = parts;
  store.notes.heard(note.id, text, hypothesis);
  store.turns.tells(turn.turnId, note.id);
  const said = { id: note.id, said: Temporal.Instant.from(note.saidAt), text };
  if (isAlone(parts, hearing)) {
    store.hearings.finish(note.id, "heard", { text, records: [] });
    if (hearing.reply !== null) turn.voice = { reply: hearing.reply, words: text };
    respond(turn, said, null);
    return;
  }
  turn.gathered = [];
  respond(turn, said, null);
  const replies = turn.gathered;
  turn.gathered = null;
  const words = [`“${shortened(text, QUOTE_LENGTH)}”`, ...replies.map((reply) => reply.text)].join("\n");
  finish(
    turn,
    hearing,
    "heard",
    words,
    replies.flatMap(({ shows }) => shows?.records ?? []),
  );
};

/** Takes the words of a voice note, or why there are none. To be run inside a transaction. Returns the turn that it was. */
export const takeHeard = (parts: Parts, hearing: Hearing, heard: Heard | HearFailure): Turn | undefined => {
  const note = parts.store.notes.get(hearing.noteId);
  const turn = note === undefined ? undefined : turnFor(parts, note);
  if (note === undefined || turn === undefined) {
    parts.store.hearings.move(hearing.noteId, "unheard");
    return undefined;
  }
  if (heard.tag !== "heard") finishAlone(turn, parts, hearing, WHY_NOT[heard.tag]);
  else if (heard.text.trim() === "") finishAlone(turn, parts, hearing, NO_WORDS);
  else tellHeard(turn, parts, hearing, note, heard);
  return turn;
};

const finishAlone = (turn: Turn, parts: Parts, hearing: Hearing, text: string): void => {
  if (!isAlone(parts, hearing)) return finish(turn, hearing, "unheard", text, []);
  parts.store.hearings.finish(hearing.noteId, "unheard", { text, records: [] });
  if (hearing.reply === null) turn.say({ text });
  else turn.edit(hearing.reply, { text });
};
