import type { Logger } from "pino";
import type { Store } from "../../store/store.ts";
import type { Clock } from "../clock.ts";
import type { FileSource } from "./media-worker.ts";
import { createPoller } from "./poller.ts";
import { createSender } from "./sender.ts";

/** One channel in both directions: what comes in is put into the inbox, what is in the outbox goes out. */
export type Line = {
  readonly channel: string;
  readonly files: FileSource;
  /** Sends what waits now. */
  readonly wake: () => void;
  readonly stop: () => Promise<void>;
};

/** Opens a line to one Bot API and starts polling it. */
export const openLine = (parts: {
  readonly channel: string;
  readonly token: string;
  readonly apiRoot: string;
  readonly store: Store;
  readonly clock: Clock;
  readonly mediaDir: string;
  readonly log: Logger;
  readonly onStored: () => void;
  readonly onUnkept: (error: unknown) => void;
  readonly say: (sentence: string) => void;
}): Line => {
  const { channel, token, apiRoot, store, mediaDir, log } = parts;
  const poller = createPoller(parts);
  const sender = createSender({ channel, api: poller.bot.api, store, mediaDir, log });
  const polling = poller.start();
  return {
    channel,
    files: { api: poller.bot.api, fileUrl: (path) => `${apiRoot}/file/bot${token}/${path}` },
    wake: () => sender.wake(),
    stop: async () => {
      await poller.stop();
      await Promise.allSettled([polling]);
      await sender.stop();
    },
  };
};
