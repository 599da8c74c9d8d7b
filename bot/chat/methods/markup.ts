import type { InlineKeyboardMarkup } from "grammy/types";
import { z } from "zod";
import { badRequest } from "../refusal.ts";
import { loose } from "./method.ts";

/** Largest callback data in bytes. Source: Bot API, InlineKeyboardButton. */
const MAX_DATA_BYTES = 64;

const button = z.object({ text: z.string().min(1), callback_data: z.string() });
const keyboard = z.object({ inline_keyboard: z.array(z.array(button)) });
const withoutButtons = z.union([
  z.object({ force_reply: z.literal(true) }),
  z.object({ remove_keyboard: z.literal(true) }),
]);

export const replyMarkup = loose(z.union([keyboard, withoutButtons])).optional();

/** The buttons of a reply markup that a message keeps. Throws when a button's data is empty or too long. */
export const keyboardOf = (markup: z.output<typeof replyMarkup>): InlineKeyboardMarkup | undefined => {
  if (!markup || !("inline_keyboard" in markup)) return undefined;
  const rows = markup.inline_keyboard.filter((row) => row.length > 0);
  for (const { callback_data: data } of rows.flat()) {
    const bytes = Buffer.byteLength(data);
    if (bytes < 1 || bytes > MAX_DATA_BYTES) throw badRequest("BUTTON_DATA_INVALID");
  }
  return rows.length > 0 ? { inline_keyboard: rows } : undefined;
};
