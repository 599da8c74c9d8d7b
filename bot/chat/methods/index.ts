import { deleteMyCommands, deleteWebhook, getFile, getMe, getMyCommands, setMyCommands } from "./about.ts";
import { deleteMessage, editMessageCaption, editMessageReplyMarkup, editMessageText } from "./changing.ts";
import { answerCallbackQuery, getUpdates, sendChatAction } from "./listening.ts";
import type { Method } from "./method.ts";
import { sendAudio, sendDocument, sendMessage, sendPhoto, sendVoice } from "./sending.ts";

const METHODS = {
  answerCallbackQuery,
  deleteMessage,
  deleteMyCommands,
  deleteWebhook,
  editMessageCaption,
  editMessageReplyMarkup,
  editMessageText,
  getFile,
  getMe,
  getMyCommands,
  getUpdates,
  sendAudio,
  sendChatAction,
  sendDocument,
  sendMessage,
  sendPhoto,
  sendVoice,
  setMyCommands,
} as const satisfies Record<string, Method>;

const byName = new Map<string, Method>(
  Object.entries(METHODS).map(([name, method]) => [name.toLowerCase(), method]),
);

/** The method of that name, in any case of letters, as the Bot API takes it. */
export const methodNamed = (name: string): Method | undefined => byName.get(name.toLowerCase());
