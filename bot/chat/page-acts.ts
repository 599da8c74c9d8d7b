import type { IncomingMessage } from "node:http";
import { z } from "zod";
import type { PersonRow } from "./chat-log.ts";
import { readBody, readJson } from "./http/body.ts";
import { MAX_FILE_BYTES } from "./media.ts";
import { messageOf } from "./messages.ts";
import { MAX_SAID, type People } from "./people.ts";
import { Refusal } from "./refusal.ts";
import { tameLine } from "./tame.ts";

/** JSON may spell a character with up to six; above that a text is refused before it is parsed. */
const MAX_JSON_BYTES = MAX_SAID * 6 + 1000;

const key = z.string().regex(/^[\w-]{8,48}$/);
const number = z.coerce.number().int().nonnegative();

const said = z.object({ key, text: z.string(), replyTo: number.optional() });
const edited = z.object({ message: number, text: z.string() });
const tapped = z.object({ key, message: number, data: z.string() });
const named = z.object({ name: z.string() });
const sent = z.object({
  key,
  kind: z.enum(["photo", "document", "voice", "audio"]),
  name: z.string(),
  caption: z.string().optional(),
  durationSeconds: z.coerce.number().nonnegative().transform(Math.round).optional(),
  replyTo: number.optional(),
});

/** Parses what the page sent. Throws 400. */
export const understood = <S extends z.ZodType>(shape: S, value: unknown): z.output<S> => {
  const parsed = shape.safeParse(value);
  if (!parsed.success) throw new Refusal(400, "That could not be understood.");
  return parsed.data;
};

/** One thing a person does on the page; resolves to the answer's JSON once it is kept. */
export type Act = (request: IncomingMessage, person: PersonRow, url: URL) => Promise<object>;

export const readPageJson = (request: IncomingMessage): Promise<unknown> => readJson(request, MAX_JSON_BYTES);

/** The acts by the name under which the page asks for them. */
export const createActs = (people: People): ReadonlyMap<string, Act> => {
  const heard = async <S extends z.ZodType>(request: IncomingMessage, shape: S) =>
    understood(shape, await readPageJson(request));

  const say: Act = async (request, person) => ({
    message: messageOf(people.say(person, await heard(request, said))),
  });
  const edit: Act = async (request, person) => {
    const { message, text } = await heard(request, edited);
    return { message: messageOf(people.edit(person, message, text)) };
  };
  const tap: Act = async (request, person) => ({ fresh: people.tap(person, await heard(request, tapped)) });
  const file: Act = async (request, person, url) => {
    const about = understood(sent, Object.fromEntries(url.searchParams));
    const bytes = await readBody(request, MAX_FILE_BYTES);
    const row = await people.send(person, { ...about, bytes, mime: request.headers["content-type"] });
    return { message: messageOf(row) };
  };
  const name: Act = async (request, person) => {
    const wanted = tameLine((await heard(request, named)).name, 40);
    if (wanted === "") throw new Refusal(400, "A name needs at least one letter.");
    people.rename(person, wanted);
    return { name: wanted };
  };
  return new Map(Object.entries({ say, edit, tap, file, name }));
};
