import { join } from "node:path";
import type { Logger } from "pino";
import type { Hearing as Ear } from "../../nlp/hear/hearing.ts";
import type { Hearing } from "../../store/hearings.ts";
import { NOTHING_SHOWN } from "../../store/outbox.ts";
import type { Store } from "../../store/store.ts";
import type { Clock } from "../clock.ts";
import { takeHeard } from "../conversation/heard.ts";
import { sayLength } from "../conversation/sound.ts";

export type HearingWorker = { wake(): void; stop(): Promise<void> };

/** Short notes are through before a word about progress could be read. */
const WORTH_PROGRESS_SECONDS = 60;
const PROGRESS_EVERY_MS = 4000;

/** Turns the voice notes that wait into words, one at a time, in the order of their recording. */
export const createHearingWorker = (parts: {
  readonly store: Store;
  readonly clock: Clock;
  readonly mediaDir: string;
  /** Undefined as long as there are no weights. */
  readonly ear: () => Ear | undefined;
  readonly log: Logger;
  readonly onSaid: () => void;
}): HearingWorker => {
  const { store, clock, log } = parts;
  let stopped = false;
  let running: Promise<void> | undefined;

  const progress = (hearing: Hearing) => {
    let lastMs = Date.now();
    const note = store.notes.get(hearing.noteId);
    const alone = hearing.reply !== null && store.hearings.sharing(hearing.reply).length === 1;
    return (done: { readonly doneSeconds: number; readonly totalSeconds: number }): void => {
      if (
        !alone ||
        note === undefined ||
        done.totalSeconds < WORTH_PROGRESS_SECONDS ||
        Date.now() - lastMs < PROGRESS_EVERY_MS
      )
        return;
      lastMs = Date.now();
      const text = `Listening… ${sayLength(done.doneSeconds)} of ${sayLength(done.totalSeconds)}.`;
      store.outbox.put({
        channel: note.channel,
        chatId: note.chatId,
        method: "editMessageText",
        payload: { text },
        edits: hearing.reply,
        shows: NOTHING_SHOWN,
        turnId: null,
        at: clock.now().toString(),
      });
      parts.onSaid();
    };
  };

  /** False when nothing more can be heard for now. */
  const listen = async (ear: Ear, hearing: Hearing): Promise<boolean> => {
    const file = store.notes.get(hearing.noteId)?.media?.file ?? "";
    const heard = await ear.hear(join(parts.mediaDir, file), { onProgress: progress(hearing) });
    if (heard.tag === "closed" || heard.tag === "no-model") return false;
    if (heard.tag !== "heard")
      log.warn({ note: hearing.noteId, why: heard.tag }, "a voice note has no words");
    store.transact(() => takeHeard({ store, now: clock.now() }, hearing, heard));
    parts.onSaid();
    return true;
  };

  const drain = async (): Promise<void> => {
    for (;;) {
      const ear = parts.ear();
      const hearing = stopped || ear === undefined ? undefined : store.hearings.next("to-hear");
      if (ear === undefined || hearing === undefined || !(await listen(ear, hearing))) return;
    }
  };

  return {
    wake: () => {
      running ??= drain().finally(() => {
        running = undefined;
      });
    },
    stop: async () => {
      stopped = true;
      parts.ear()?.close();
      await running;
    },
  };
};
