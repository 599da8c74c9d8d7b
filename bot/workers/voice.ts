import type { Logger } from "pino";
import type { Store } from "../../store/store.ts";
import type { Clock } from "../clock.ts";
import { takeHeard } from "../conversation/heard.ts";
import type { Ear } from "./ear.ts";
import { createHearingWorker } from "./hearing-worker.ts";
import { createMediaWorker, type FileSource } from "./media-worker.ts";

/** Weights may be fetched, and sounds be waiting, while the program runs. */
const LOOK_EVERY_MS = 20_000;

/** From a file at its channel to words in the log. */
export const startVoice = (parts: {
  readonly store: Store;
  readonly clock: Clock;
  readonly mediaDir: string;
  readonly ear: Ear;
  readonly sourceOf: (channel: string) => FileSource | undefined;
  readonly log: Logger;
  readonly onSaid: () => void;
}): { wake(): void; stop(): Promise<void> } => {
  const { store, clock, ear, log, onSaid } = parts;
  const hearing = createHearingWorker({ ...parts, ear: ear.hearing });
  const media = createMediaWorker({
    ...parts,
    onFetched: () => hearing.wake(),
    onLost: (lost) => {
      takeHeard({ store, now: clock.now() }, lost, { tag: "no-file" });
      onSaid();
    },
  });
  const look = (): void =>
    void ear.look().then(
      () => hearing.wake(),
      (error: unknown) => log.error({ fault: String(error) }, "the weights could not be looked for"),
    );
  const timer = setInterval(look, LOOK_EVERY_MS);
  return {
    wake: () => {
      media.wake();
      hearing.wake();
    },
    stop: async () => {
      clearInterval(timer);
      await media.stop();
      await hearing.stop();
      ear.close();
    },
  };
};
