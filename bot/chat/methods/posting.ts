import type { Message } from "grammy/types";
import { z } from "zod";
import type { MessageRow, PersonRow } from "../chat-log.ts";
import { chatOf, type Letter, messageOf, quoted } from "../messages.ts";
import { badRequest } from "../refusal.ts";
import { keyboardOf, replyMarkup } from "./markup.ts";
import { loose, looseInteger, type Office } from "./method.ts";

/** The parameters that every sending method shares. */
export const posting = {
  chat_id: looseInteger,
  reply_markup: replyMarkup,
  reply_parameters: loose(
    z.object({ message_id: z.int(), allow_sending_without_reply: z.boolean().optional() }),
  ).optional(),
  /** Ours: the same value again gives the first message instead of a second one. */
  holdfast_once: z.string().min(1).max(200).optional(),
};
type Posting = z.output<z.ZodObject<typeof posting>>;

export const personAt = ({ log }: Office, chat: number): PersonRow => {
  const person = log.person(chat);
  if (!person) throw badRequest("chat not found");
  return person;
};

const repliedTo = ({ log }: Office, { chat_id, reply_parameters: wanted }: Posting) => {
  if (!wanted) return {};
  const row = log.message(wanted.message_id);
  const message = row?.chat === chat_id ? messageOf(row) : undefined;
  if (!message) {
    if (wanted.allow_sending_without_reply === true) return {};
    throw badRequest("message to be replied not found");
  }
  return { reply_to_message: quoted(message) };
};

const onceKey = (value: string) => `bot:${value}`;

/** A row as the answer of a sending method, also when the message was deleted meanwhile. */
const sent = (office: Office, row: MessageRow): Message =>
  messageOf(row) ?? { message_id: row.id, date: 0, chat: chatOf(personAt(office, row.chat)) };

/** The answer to a sending method that was already done under this `holdfast_once`. */
export const alreadySent = (office: Office, { holdfast_once: once }: Posting): Message | undefined => {
  const row = once === undefined ? undefined : office.log.messageByOnce(onceKey(once));
  return row && sent(office, row);
};

/** Sends a message of the bot. */
export const post = (office: Office, params: Posting, fields: Partial<Letter>): Message => {
  const person = personAt(office, params.chat_id);
  const keyboard = keyboardOf(params.reply_markup);
  const letter: Letter = {
    from: office.bot,
    chat: chatOf(person),
    date: Math.floor(office.now() / 1000),
    ...repliedTo(office, params),
    ...fields,
    ...(keyboard && { reply_markup: keyboard }),
  };
  const once = params.holdfast_once;
  return sent(office, office.mailroom.add(letter, once === undefined ? null : onceKey(once)));
};
