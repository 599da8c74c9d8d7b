import { join } from "node:path";
import { type Api, GrammyError, InputFile } from "grammy";
import { z } from "zod";
import type { OutboxItem } from "../../store/outbox.ts";
import type { Store } from "../../store/store.ts";

export type Delivery =
  | { readonly is: "sent"; readonly messageId: number | null }
  | { readonly is: "later"; readonly waitSeconds: number; readonly why: string }
  | { readonly is: "refused"; readonly why: string };

const LONGEST_WAIT_SECONDS = 30;

const backoffSeconds = (attempts: number): number =>
  Math.min(LONGEST_WAIT_SECONDS, 2 ** Math.min(attempts, 5));

const sentMessage = z.object({ message_id: z.number() });
const voicePayload = z.object({ voice: z.object({ file: z.string() }) });

type Call = (method: string, payload: Readonly<Record<string, unknown>>) => Promise<unknown>;

const caller =
  (api: Api): Call =>
  (method, payload) =>
    (api.raw as unknown as Record<string, (payload: unknown) => Promise<unknown>>)[method]?.(payload) ??
    Promise.reject(new Error(`The Bot API has no method "${method}".`));

const targetOf = (store: Store, item: OutboxItem): number | null =>
  item.edits === null ? null : (store.outbox.get(item.edits)?.messageId ?? null);

const send = async (call: Call, store: Store, mediaDir: string, item: OutboxItem): Promise<number | null> => {
  const payload = { ...item.payload, chat_id: item.chatId, holdfast_once: `outbox-${item.id}` };
  switch (item.method) {
    case "answerCallbackQuery":
      await call(item.method, item.payload);
      return null;
    case "editMessageText": {
      const target = targetOf(store, item);
      if (target === null) return sentMessage.parse(await call("sendMessage", payload)).message_id;
      await call(item.method, { ...item.payload, chat_id: item.chatId, message_id: target });
      return target;
    }
    case "sendVoice": {
      const { file } = voicePayload.parse(item.payload).voice;
      const sent = await call(item.method, { ...payload, voice: new InputFile(join(mediaDir, file)) });
      return sentMessage.parse(sent).message_id;
    }
    default:
      return sentMessage.parse(await call(item.method, payload)).message_id;
  }
};

const failed = (error: unknown, item: OutboxItem, target: number | null): Delivery => {
  if (!(error instanceof GrammyError))
    return { is: "later", waitSeconds: backoffSeconds(item.attempts), why: "no connection" };
  const { error_code: code, description, parameters } = error;
  if (description.includes("message is not modified")) return { is: "sent", messageId: target };
  if (code === 429) return { is: "later", waitSeconds: parameters.retry_after ?? 5, why: "too many at once" };
  if (code >= 500 || code === 401 || code === 409)
    return { is: "later", waitSeconds: backoffSeconds(item.attempts), why: `error ${code}` };
  return { is: "refused", why: `${code}: ${description}` };
};

/** Hands one reply to the messenger; never throws, never reveals the token. */
export const deliver = async (
  api: Api,
  store: Store,
  mediaDir: string,
  item: OutboxItem,
): Promise<Delivery> => {
  try {
    return { is: "sent", messageId: await send(caller(api), store, mediaDir, item) };
  } catch (error) {
    return failed(error, item, targetOf(store, item));
  }
};
