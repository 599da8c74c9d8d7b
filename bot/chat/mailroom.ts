import type { Message } from "grammy/types";
import type { ChatLog, MessageRow } from "./chat-log.ts";
import type { Hub } from "./hub.ts";
import { type Letter, messageOf } from "./messages.ts";
import type { UpdateKind, UpdateQueue } from "./update-queue.ts";

/** What goes with a change of a message to the bot, if anything does. */
type Report = (message: Message) => { kind: UpdateKind; body: object };

export type Mailroom = {
  /** Adds a message; a `once` that was used before gives the message that it was used for, and adds nothing. */
  add(letter: Letter, once: string | null, report?: Report): MessageRow;
  /** Changes a message, or deletes it with null. */
  change(id: number, letter: Letter | null, report?: Report): MessageRow;
};

/** Keeps every change of a message, tells the open pages of the chat, and queues what the bot must hear. */
export const createMailroom = (log: ChatLog, queue: UpdateQueue, hub: Hub): Mailroom => {
  const keep = (work: () => MessageRow, report: Report | undefined): MessageRow => {
    const row = log.atomically(() => {
      const kept = work();
      const message = messageOf(kept);
      if (report && message) {
        const { kind, body } = report(message);
        queue.add(kind, body);
      }
      return kept;
    });
    hub.tell(row.chat, { kind: "message", id: row.id, change: row.change, message: messageOf(row) ?? null });
    if (report) queue.wake();
    return row;
  };
  return {
    add: (letter, once, report) => {
      const known = once === null ? undefined : log.messageByOnce(once);
      return known ?? keep(() => log.addMessage(letter.chat.id, JSON.stringify(letter), once), report);
    },
    change: (id, letter, report) => keep(() => log.setMessage(id, letter && JSON.stringify(letter)), report),
  };
};
