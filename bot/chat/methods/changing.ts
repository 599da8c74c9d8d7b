import { isDeepStrictEqual } from "node:util";
import { z } from "zod";
import { type Letter, letterOf, messageOf } from "../messages.ts";
import { badRequest } from "../refusal.ts";
import { without } from "../without.ts";
import { keyboardOf, replyMarkup } from "./markup.ts";
import { looseInteger, method, type Office } from "./method.ts";
import { personAt } from "./posting.ts";
import { captionFields, entities, noParseMode, textFields } from "./words.ts";

const target = { chat_id: looseInteger, message_id: looseInteger };
type Target = { chat_id: number; message_id: number };

const standing = (office: Office, { chat_id, message_id }: Target, deed: string) => {
  personAt(office, chat_id);
  const row = office.log.message(message_id);
  const letter = row?.chat === chat_id ? letterOf(row) : undefined;
  if (!row || !letter) throw badRequest(`message to ${deed} not found`);
  return { row, letter };
};

const NOT_MODIFIED =
  "message is not modified: specified new message content and reply markup are exactly the same as a current content and reply markup of the message";

type Edit = Target & { readonly reply_markup?: z.output<typeof replyMarkup> };

/** Changes one of the bot's messages; its buttons become those given, or none. */
const rewrite = (office: Office, params: Edit, change: (letter: Letter) => Letter) => {
  const { row, letter } = standing(office, params, "edit");
  if (letter.from.id !== office.bot.id) throw badRequest("message can't be edited");
  const keyboard = keyboardOf(params.reply_markup);
  const next = { ...without(change(letter), "reply_markup"), ...(keyboard && { reply_markup: keyboard }) };
  if (isDeepStrictEqual(next, letter)) throw badRequest(NOT_MODIFIED);
  return messageOf(office.mailroom.change(row.id, { ...next, edit_date: Math.floor(office.now() / 1000) }));
};

export const editMessageText = method(
  z.object({
    ...target,
    text: z.string().optional(),
    entities,
    parse_mode: noParseMode,
    reply_markup: replyMarkup,
  }),
  (office, params) => {
    const words = textFields(params.text, params.entities);
    return rewrite(office, params, (letter) => {
      if (letter.text === undefined) throw badRequest("there is no text in the message to edit");
      return { ...without(letter, "entities", "caption", "caption_entities"), ...words };
    });
  },
);

export const editMessageCaption = method(
  z.object({
    ...target,
    caption: z.string().optional(),
    caption_entities: entities,
    parse_mode: noParseMode,
    reply_markup: replyMarkup,
  }),
  (office, params) => {
    const words = captionFields(params.caption, params.caption_entities);
    return rewrite(office, params, (letter) => {
      if (letter.text !== undefined) throw badRequest("there is no caption in the message to edit");
      return { ...without(letter, "entities", "caption", "caption_entities"), ...words };
    });
  },
);

export const editMessageReplyMarkup = method(
  z.object({ ...target, reply_markup: replyMarkup }),
  (office, params) => rewrite(office, params, (letter) => letter),
);

export const deleteMessage = method(z.object(target), (office, params) => {
  const { row } = standing(office, params, "delete");
  office.mailroom.change(row.id, null);
  return true;
});
