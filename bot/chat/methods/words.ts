import type { MessageEntity } from "grammy/types";
import { z } from "zod";
import { badRequest } from "../refusal.ts";
import { loose } from "./method.ts";

/** Limits in UTF-16 code units. Source: Bot API, sendMessage and sendPhoto. */
const MAX_TEXT = 4096;
const MAX_CAPTION = 1024;

const PLAIN_STYLES = [
  "bold",
  "italic",
  "underline",
  "strikethrough",
  "spoiler",
  "blockquote",
  "code",
  "mention",
  "hashtag",
  "bot_command",
  "url",
  "email",
  "phone_number",
] as const;

const span = { offset: z.int().nonnegative(), length: z.int().positive() };
const entity = z.union([
  z.object({ type: z.enum(PLAIN_STYLES), ...span }),
  z.object({ type: z.literal("pre"), language: z.string().optional(), ...span }),
]);

export const entities = loose(z.array(entity)).optional();
type Entities = z.output<typeof entities>;

/** Markup is never interpreted here: whoever asks for it is told, instead of the page showing raw tags. */
export const noParseMode = z
  .undefined({ error: "no markup is interpreted here; send plain text or entities" })
  .optional();

const checkedEntities = (text: string, given: Entities): MessageEntity[] | undefined => {
  for (const { offset, length } of given ?? []) {
    if (offset + length > text.length)
      throw badRequest("can't parse entities: entity is beyond the text's end");
  }
  return given && given.length > 0 ? (given as MessageEntity[]) : undefined;
};

/** The text fields of a message. Throws when the text is empty or too long, or an entity lies outside it. */
export const textFields = (text: string | undefined, given: Entities) => {
  if (text === undefined || text.trim() === "") throw badRequest("message text is empty");
  if (text.length > MAX_TEXT) throw badRequest("message is too long");
  const checked = checkedEntities(text, given);
  return { text, ...(checked && { entities: checked }) };
};

/** The caption fields of a message with a file; none when the caption is empty. */
export const captionFields = (caption: string | undefined, given: Entities) => {
  if (caption === undefined || caption.trim() === "") return {};
  if (caption.length > MAX_CAPTION) throw badRequest("message caption is too long");
  const checked = checkedEntities(caption, given);
  return { caption, ...(checked && { caption_entities: checked }) };
};
