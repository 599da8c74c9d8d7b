import type { Api } from "grammy";
import type { Logger } from "pino";
import type { Store } from "../../store/store.ts";
import { deliver } from "./deliver.ts";

export type Sender = { wake(): void; stop(): Promise<void> };

const HEARTBEAT_MS = 1000;

/**
 * Sends what waits in the outbox of one channel, in order. Waiting times are those of the machine, whatever clock the
 * conversation goes by.
 */
export const createSender = (parts: {
  readonly channel: string;
  readonly api: Api;
  readonly store: Store;
  readonly mediaDir: string;
  readonly log: Logger;
}): Sender => {
  const { channel, api, store, mediaDir, log } = parts;
  let stopped = false;
  let running: Promise<void> | undefined;
  let restUntil = 0;

  const drain = async (): Promise<void> => {
    while (!stopped && Date.now() >= restUntil) {
      const item = store.outbox.next(channel);
      if (item === undefined) return;
      const delivery = await deliver(api, store, mediaDir, item);
      switch (delivery.is) {
        case "sent":
          store.outbox.sent(item.id, delivery.messageId);
          break;
        case "refused":
          log.warn({ outbox: item.id, why: delivery.why }, "a reply was refused");
          store.outbox.refused(item.id, delivery.why);
          break;
        case "later":
          store.outbox.later(item.id, delivery.why);
          restUntil = Date.now() + delivery.waitSeconds * 1000;
      }
    }
  };

  const wake = (): void => {
    running ??= drain().finally(() => {
      running = undefined;
    });
  };
  const heartbeat = setInterval(wake, HEARTBEAT_MS);

  return {
    wake,
    stop: async () => {
      stopped = true;
      clearInterval(heartbeat);
      await running;
    },
  };
};
