import type { Update } from "grammy/types";
import type { ChatLog, UpdateRow } from "./chat-log.ts";
import { Refusal } from "./refusal.ts";

export type UpdateKind = "message" | "edited_message" | "callback_query";

type Poll = {
  /** Updates below it are confirmed and forgotten; negative: start that many from the end. */
  readonly offset: number;
  readonly limit: number;
  readonly timeoutSeconds: number;
  /** Empty: every kind. */
  readonly allowed: readonly string[];
};

export type UpdateQueue = {
  /** Keeps an update. Call `wake` once the transaction around it is over. */
  add(kind: UpdateKind, body: object): number;
  wake(): void;
  /** Waits until there is something, the time is over or the signal fires; a newer poll ends an older one (409). */
  poll(poll: Poll, signal: AbortSignal): Promise<Update[]>;
  /** Ends a waiting poll with nothing. */
  close(): void;
};

const toUpdate = (row: UpdateRow): Update => ({
  update_id: row.id,
  [row.kind]: JSON.parse(row.body) as unknown,
});

const waiting = (log: ChatLog, { offset, limit, allowed }: Poll): Update[] => {
  if (offset > 0) log.confirmUpdates(offset);
  if (offset < 0) log.confirmUpdates(log.lastUpdates(-offset)[0]?.id ?? 0);
  if (allowed.length === 0) return log.updatesFrom(0, limit).map(toUpdate);
  const wanted = log.updatesFrom(0, Number.MAX_SAFE_INTEGER).filter((row) => allowed.includes(row.kind));
  return wanted.slice(0, limit).map(toUpdate);
};

const conflict = () =>
  new Refusal(
    409,
    "Conflict: terminated by other getUpdates request; make sure that only one bot instance is running",
  );

type Waiter = { wake(): void; fail(reason: Refusal): void };

/** The updates that the bot has yet to confirm, and the one poll that waits for them. */
export const createUpdateQueue = (log: ChatLog): UpdateQueue => {
  let waiter: Waiter | undefined;
  let closed = false;

  const pause = (milliseconds: number, signal: AbortSignal) =>
    new Promise<void>((resolve, reject) => {
      const over = (end: () => void) => () => {
        clearTimeout(timer);
        signal.removeEventListener("abort", done);
        if (waiter === mine) waiter = undefined;
        end();
      };
      const done = over(resolve);
      const mine: Waiter = { wake: done, fail: (reason) => over(() => reject(reason))() };
      const timer = setTimeout(done, milliseconds);
      signal.addEventListener("abort", done);
      waiter = mine;
    });

  const poll: UpdateQueue["poll"] = async (wanted, signal) => {
    waiter?.fail(conflict());
    const ends = performance.now() + wanted.timeoutSeconds * 1000;
    for (;;) {
      const found = waiting(log, wanted);
      const left = ends - performance.now();
      if (found.length > 0 || left <= 0 || closed || signal.aborted) return found;
      await pause(left, signal);
    }
  };

  return {
    add: (kind, body) => log.addUpdate(kind, JSON.stringify(body)).id,
    wake: () => waiter?.wake(),
    poll,
    close: () => {
      closed = true;
      waiter?.wake();
    },
  };
};
