import { z } from "zod";
import type { OutboxItem } from "../../store/outbox.ts";
import type { Store } from "../../store/store.ts";

const buttonSchema = z.object({ text: z.string(), callback_data: z.string() });
const payloadSchema = z.object({
  text: z.string().optional(),
  reply_markup: z.object({ inline_keyboard: z.array(z.array(buttonSchema)) }).optional(),
});

export type ShownButton = z.infer<typeof buttonSchema>;

export const textOf = (item: OutboxItem): readonly string[] => {
  const { text } = payloadSchema.parse(item.payload);
  return text === undefined || item.method === "answerCallbackQuery" ? [] : [text];
};

export const buttonsOf = (item: OutboxItem): readonly ShownButton[] =>
  payloadSchema.parse(item.payload).reply_markup?.inline_keyboard.flat() ?? [];

/** The newest button with a label, among the buttons that still stand under the messages of a chat. */
export const lastButton = (
  store: Store,
  channel: string,
  chatId: number,
  label: string,
): { readonly messageId: number; readonly data: string } | undefined => {
  const wanted = label.trim().toLowerCase();
  const edited = new Set<number>();
  for (const item of store.outbox.newestFirst(channel, chatId)) {
    const message = item.messageId;
    if (message === null || edited.has(message)) continue;
    if (item.method !== "answerCallbackQuery") edited.add(message);
    const button = buttonsOf(item).find(({ text }) => text.toLowerCase() === wanted);
    if (button !== undefined) return { messageId: message, data: button.callback_data };
  }
  return undefined;
};
