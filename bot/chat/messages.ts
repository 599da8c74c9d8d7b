import type { Chat, Message, MessageEntity, User } from "grammy/types";
import type { MessageRow, PersonRow } from "./chat-log.ts";
import { without } from "./without.ts";

/** A message as it is kept: its number lives in its row. */
export type Letter = Omit<Message, "message_id" | "chat" | "date" | "from"> & {
  readonly chat: Chat.PrivateChat;
  readonly from: User;
  /** Unix time in seconds. */
  readonly date: number;
};

/** Who has not said what to be called. */
const NAMELESS = "Somebody";

export const userOf = (person: PersonRow): User => ({
  id: person.chat,
  is_bot: false,
  first_name: person.name || NAMELESS,
});

export const chatOf = (person: PersonRow): Chat.PrivateChat => ({
  id: person.chat,
  type: "private",
  first_name: person.name || NAMELESS,
});

export const letterOf = (row: MessageRow): Letter | undefined =>
  row.body === null ? undefined : (JSON.parse(row.body) as Letter);

/** A row as the Bot API's Message; undefined once it was deleted. */
export const messageOf = (row: MessageRow): Message | undefined => {
  const letter = letterOf(row);
  return letter && { message_id: row.id, ...letter };
};

/** A message as another one's reply shows it: without what it replied to itself. */
export const quoted = (message: Message): NonNullable<Message["reply_to_message"]> =>
  without(message, "reply_to_message") as NonNullable<Message["reply_to_message"]>;

const COMMAND = /(?<=^|\s)\/[A-Za-z0-9_]{1,32}(?![\w/])/g;

/** Finds the /commands in a text, as the messenger's servers do before a bot sees it. */
export const commandEntities = (text: string): MessageEntity[] =>
  [...text.matchAll(COMMAND)].map(({ index, 0: { length } }) => ({
    type: "bot_command",
    offset: index,
    length,
  }));
