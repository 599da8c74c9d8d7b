import type { Message, Update } from "grammy/types";
import { Temporal } from "temporal-polyfill";

/** Where a message came from. */
export type Origin = {
  readonly chatId: number;
  readonly messageId: number;
  readonly senderName: string;
  readonly saidAt: Temporal.Instant;
  readonly replyTo: number | null;
};

export type SoundFile = {
  readonly fileId: string;
  readonly seconds: number | null;
  readonly bytes: number | null;
  readonly name: string | null;
};

/** What came in, as far as the conversation cares. */
export type Incoming =
  | (Origin & { readonly is: "text"; readonly text: string; readonly edited: boolean })
  | (Origin & { readonly is: "sound"; readonly sound: SoundFile; readonly caption: string })
  | (Origin & { readonly is: "photo"; readonly fileId: string; readonly caption: string })
  | (Origin & { readonly is: "unreadable" })
  | {
      readonly is: "tap";
      readonly chatId: number;
      readonly messageId: number;
      readonly tapId: string;
      readonly data: string;
      readonly senderName: string;
    }
  /** Nothing that a person said to the bot: joins, other bots, channels. */
  | { readonly is: "nothing" };

const instant = (seconds: number): Temporal.Instant => Temporal.Instant.fromEpochMilliseconds(seconds * 1000);

const originOf = (message: Message): Origin => ({
  chatId: message.chat.id,
  messageId: message.message_id,
  senderName: message.from?.first_name ?? "someone",
  saidAt: instant(message.forward_origin?.date ?? message.date),
  replyTo: message.reply_to_message?.message_id ?? null,
});

const SOUND_NAME = /\.(?:ogg|oga|opus|mp3|m4a|aac|wav|webm|flac)$/i;

const soundOf = (message: Message): SoundFile | undefined => {
  const sound = message.voice ?? message.audio ?? message.video_note;
  const name = message.audio?.file_name ?? null;
  if (sound) return { fileId: sound.file_id, seconds: sound.duration, bytes: sound.file_size ?? null, name };
  const { document } = message;
  const isSound =
    document &&
    (document.mime_type?.startsWith("audio/") === true || SOUND_NAME.test(document.file_name ?? ""));
  return isSound
    ? {
        fileId: document.file_id,
        seconds: null,
        bytes: document.file_size ?? null,
        name: document.file_name ?? null,
      }
    : undefined;
};

const photoOf = (message: Message): string | undefined =>
  message.photo?.at(-1)?.file_id ??
  (message.document?.mime_type?.startsWith("image/") === true ? message.document.file_id : undefined);

const fromMessage = (message: Message, edited: boolean): Incoming => {
  if (message.chat.type !== "private") return { is: "nothing" };
  const origin = originOf(message);
  if (message.text !== undefined) return { ...origin, is: "text", text: message.text, edited };
  if (edited && message.caption !== undefined)
    return { ...origin, is: "text", text: message.caption, edited };
  const caption = message.caption ?? "";
  const sound = soundOf(message);
  if (sound) return { ...origin, is: "sound", sound, caption };
  const photo = photoOf(message);
  if (photo !== undefined) return { ...origin, is: "photo", fileId: photo, caption };
  if (message.pinned_message ?? message.message_auto_delete_timer_changed) return { is: "nothing" };
  return { ...origin, is: "unreadable" };
};

/** An update of the Bot API as the conversation sees it. */
export const incomingFrom = (update: Update): Incoming => {
  if (update.message) return fromMessage(update.message, false);
  if (update.edited_message) return fromMessage(update.edited_message, true);
  const tap = update.callback_query;
  if (tap?.message === undefined) return { is: "nothing" };
  return {
    is: "tap",
    chatId: tap.message.chat.id,
    messageId: tap.message.message_id,
    tapId: tap.id,
    data: tap.data ?? "",
    senderName: tap.from.first_name,
  };
};
