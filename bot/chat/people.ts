import { createHash } from "node:crypto";
import type { CallbackQuery, Message } from "grammy/types";
import type { ChatLog, MessageRow, PersonRow } from "./chat-log.ts";
import type { FileShelf, Upload } from "./file-shelf.ts";
import type { Mailroom } from "./mailroom.ts";
import { MAX_FILE_BYTES, type MediaKind, mediaFields, SHELF_OF, type Size, sizeOfPicture } from "./media.ts";
import { chatOf, commandEntities, type Letter, letterOf, messageOf, quoted, userOf } from "./messages.ts";
import { Refusal } from "./refusal.ts";
import type { UpdateQueue } from "./update-queue.ts";
import { without } from "./without.ts";

/** The longest text that a person may send, in UTF-16 code units. */
export const MAX_SAID = 100_000;

/** `key` is the sender's own name for this act: the same act sent again changes nothing. */
type Said = { readonly key: string; readonly text: string; readonly replyTo?: number | undefined };

type Sent = Upload & {
  readonly key: string;
  readonly kind: MediaKind;
  readonly caption?: string | undefined;
  readonly durationSeconds?: number | undefined;
  readonly replyTo?: number | undefined;
};

type Tapped = { readonly key: string; readonly message: number; readonly data: string };

export type People = {
  /** The person with this secret, who is new when nobody has it yet. */
  enter(secret: string, name?: string): PersonRow;
  known(secret: string): PersonRow | undefined;
  rename(person: PersonRow, name: string): void;
  say(person: PersonRow, said: Said): MessageRow;
  send(person: PersonRow, sent: Sent): Promise<MessageRow>;
  edit(person: PersonRow, message: number, text: string): MessageRow;
  /** False when the tap was known already. */
  tap(person: PersonRow, tapped: Tapped): boolean;
};

type Deps = {
  readonly log: ChatLog;
  readonly mailroom: Mailroom;
  readonly queue: UpdateQueue;
  readonly shelf: FileShelf;
  /** Milliseconds since 1970. */
  readonly now: () => number;
};

const hashed = (secret: string): string => createHash("sha256").update(secret).digest("base64url");

const checkedText = (text: string): string => {
  if (text.length > MAX_SAID) {
    throw new Refusal(
      413,
      `That is longer than ${MAX_SAID.toLocaleString("en")} characters. Send it in parts, or as a file.`,
    );
  }
  if (text.trim() === "") throw new Refusal(400, "There was nothing in that message.");
  return text;
};

const textFields = (text: string): Pick<Letter, "text" | "entities"> => {
  const entities = commandEntities(text);
  return entities.length > 0 ? { text, entities } : { text };
};

const captionFields = (caption: string | undefined): Pick<Letter, "caption" | "caption_entities"> => {
  if (caption === undefined || caption.trim() === "") return {};
  const entities = commandEntities(checkedText(caption));
  return entities.length > 0 ? { caption, caption_entities: entities } : { caption };
};

/** What a file really is: a photo that cannot be read as a picture goes on as a document. */
const lookedAt = ({ kind, bytes }: Sent): { kind: MediaKind; size?: Size } => {
  if (kind !== "photo") return { kind };
  const size = sizeOfPicture(bytes);
  return size ? { kind, size } : { kind: "document" };
};

/** What people do in the chat: each act is kept and queued for the bot before the function returns. */
export const createPeople = ({ log, mailroom, queue, shelf, now }: Deps): People => {
  const seconds = () => Math.floor(now() / 1000);
  const heard = (message: Message) => ({ kind: "message" as const, body: message });
  const onceOf = (person: PersonRow, key: string) => `person:${person.chat}:${key}`;

  const own = (person: PersonRow, id: number): Message | undefined => {
    const row = log.message(id);
    return row?.chat === person.chat ? messageOf(row) : undefined;
  };

  const letter = (person: PersonRow, replyTo: number | undefined): Letter => {
    const replied = replyTo === undefined ? undefined : own(person, replyTo);
    return {
      from: userOf(person),
      chat: chatOf(person),
      date: seconds(),
      ...(replied && { reply_to_message: quoted(replied) }),
    };
  };

  const say: People["say"] = (person, { key, text, replyTo }) =>
    mailroom.add(
      { ...letter(person, replyTo), ...textFields(checkedText(text)) },
      onceOf(person, key),
      heard,
    );

  const send: People["send"] = async (person, sent) => {
    const known = log.messageByOnce(onceOf(person, sent.key));
    if (known) return known;
    if (sent.bytes.byteLength > MAX_FILE_BYTES) throw new Refusal(413, "That file is larger than 20 MB.");
    if (sent.bytes.byteLength === 0) throw new Refusal(400, "That file is empty.");
    const caption = captionFields(sent.caption);
    const { kind, size } = lookedAt(sent);
    const file = await shelf.put(SHELF_OF[kind], sent);
    const media = mediaFields(kind, file, { durationSeconds: sent.durationSeconds, size });
    return mailroom.add(
      { ...letter(person, sent.replyTo), ...media, ...caption },
      onceOf(person, sent.key),
      heard,
    );
  };

  const edit: People["edit"] = (person, id, text) => {
    const row = log.message(id);
    const old = row && row.chat === person.chat ? letterOf(row) : undefined;
    if (!row || !old || old.from.is_bot) throw new Refusal(404, "That message is not there to be changed.");
    if ((old.text ?? old.caption) === text) return row;
    const kept = without(old, "text", "entities", "caption", "caption_entities");
    const words = old.text === undefined ? captionFields(text) : textFields(checkedText(text));
    return mailroom.change(id, { ...kept, ...words, edit_date: seconds() }, (message) => ({
      kind: "edited_message",
      body: message,
    }));
  };

  const hasButton = (message: Message, data: string) =>
    (message.reply_markup?.inline_keyboard ?? [])
      .flat()
      .some((b) => "callback_data" in b && b.callback_data === data);

  const tap: People["tap"] = (person, { key, message: id, data }) => {
    const message = own(person, id);
    const tapId = `${person.chat}-${key}`;
    if (log.tapChat(tapId) !== undefined) return false;
    if (!message || !hasButton(message, data)) throw new Refusal(404, "That button is no longer there.");
    const body = { id: tapId, from: userOf(person), message, chat_instance: String(person.chat), data };
    log.atomically(() => {
      log.addTap(tapId, person.chat);
      queue.add("callback_query", body satisfies Omit<CallbackQuery, "game_short_name">);
    });
    queue.wake();
    return true;
  };

  return {
    enter: (secret, name) => log.personBySecret(hashed(secret)) ?? log.addPerson(hashed(secret), name ?? ""),
    known: (secret) => log.personBySecret(hashed(secret)),
    rename: (person, name) => log.renamePerson(person.chat, name),
    say,
    send,
    edit,
    tap,
  };
};
