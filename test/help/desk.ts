import type { Update } from "grammy/types";
import pino from "pino";
import { SetClock } from "../../bot/clock.ts";
import { handleItem } from "../../bot/workers/inbox-worker.ts";
import type { Store } from "../../store/store.ts";
import { CHAT, NOW, pairedStore } from "./store.ts";

type AnyMessage = Record<string, unknown>;

/** The conversation without a network: updates go in, texts come out. */
export const createDesk = (store: Store = pairedStore()) => {
  const clock = new SetClock(NOW);
  const deps = { store, hears: { ready: () => true } };
  let nextId = 1;

  const takeOut = (channel: string): string[] => {
    const texts: string[] = [];
    for (let item = store.outbox.next(channel); item !== undefined; item = store.outbox.next(channel)) {
      store.outbox.sent(
        item.id,
        item.edits === null ? 10_000 + item.id : (store.outbox.get(item.edits)?.messageId ?? null),
      );
      if (item.method !== "answerCallbackQuery") texts.push(String(item.payload["text"]));
    }
    return texts;
  };

  const receive = (
    update: Partial<Update> | Record<string, unknown>,
    channel: string = CHAT.channel,
  ): string[] => {
    const id = nextId++;
    store.inbox.put(channel, id, { update_id: id, ...update }, clock.now().toString());
    for (let item = store.inbox.next(); item !== undefined; item = store.inbox.next()) {
      handleItem(deps, item, clock, pino({ level: "silent" }));
    }
    return takeOut(channel);
  };

  const message = (fields: AnyMessage, chatId: number = CHAT.chatId): AnyMessage => ({
    message_id: nextId + 1000,
    date: Math.floor(clock.now().epochMilliseconds / 1000),
    chat: { id: chatId, type: "private", first_name: "Ines" },
    from: { id: chatId, is_bot: false, first_name: "Ines" },
    ...fields,
  });

  return {
    store,
    clock,
    receive,
    message,
    say: (text: string, fields: AnyMessage = {}) => receive({ message: message({ text, ...fields }) }),
    tap: (data: string, messageId = 1) =>
      receive({
        callback_query: {
          id: String(nextId),
          from: { id: CHAT.chatId, is_bot: false, first_name: "Ines" },
          chat_instance: "1",
          data,
          message: message({ message_id: messageId, text: "" }),
        },
      }),
  };
};
