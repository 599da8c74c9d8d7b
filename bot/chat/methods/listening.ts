import { z } from "zod";
import { badRequest } from "../refusal.ts";
import { loose, looseInteger, method } from "./method.ts";
import { personAt } from "./posting.ts";

const MAX_UPDATES = 100;
const MAX_POLL_SECONDS = 50;

const within = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high);

export const getUpdates = method(
  z.object({
    offset: looseInteger.default(0),
    limit: looseInteger.default(MAX_UPDATES),
    timeout: looseInteger.default(0),
    allowed_updates: loose(z.array(z.string())).default([]),
  }),
  ({ queue }, params, { signal }) =>
    queue.poll(
      {
        offset: params.offset,
        limit: within(params.limit, 1, MAX_UPDATES),
        timeoutSeconds: within(params.timeout, 0, MAX_POLL_SECONDS),
        allowed: params.allowed_updates,
      },
      signal,
    ),
);

export const answerCallbackQuery = method(
  z.object({
    callback_query_id: z.string(),
    text: z.string().max(200).optional(),
    show_alert: loose(z.boolean()).optional(),
  }),
  ({ log, hub }, { callback_query_id: id, text, show_alert: alert }) => {
    const chat = log.tapChat(id);
    if (chat === undefined) {
      throw badRequest("query is too old and response timeout expired or query ID is invalid");
    }
    if (text !== undefined && text !== "") hub.tell(chat, { kind: "notice", text, alert: alert ?? false });
    return true;
  },
);

const ACTIONS = [
  "typing",
  "upload_photo",
  "record_video",
  "upload_video",
  "record_voice",
  "upload_voice",
  "upload_document",
  "choose_sticker",
  "find_location",
  "record_video_note",
  "upload_video_note",
] as const;

export const sendChatAction = method(
  z.object({
    chat_id: looseInteger,
    action: z.enum(ACTIONS, { error: "wrong parameter action in request" }),
  }),
  (office, { chat_id, action }) => {
    personAt(office, chat_id);
    office.hub.tell(chat_id, { kind: "action", action });
    return true;
  },
);
