import type { User } from "grammy/types";
import { z } from "zod";
import type { ChatLog } from "../chat-log.ts";
import type { FileShelf, Upload } from "../file-shelf.ts";
import type { Hub } from "../hub.ts";
import type { Mailroom } from "../mailroom.ts";
import { badRequest } from "../refusal.ts";
import type { UpdateQueue } from "../update-queue.ts";

/** What the methods work with. */
export type Office = {
  readonly bot: User;
  readonly log: ChatLog;
  readonly mailroom: Mailroom;
  readonly queue: UpdateQueue;
  readonly hub: Hub;
  readonly shelf: FileShelf;
  /** Milliseconds since 1970. */
  readonly now: () => number;
};

/** One request: its parameters as they came, the files that came with it, and whether the caller is still there. */
export type Call = {
  readonly params: Readonly<Record<string, unknown>>;
  readonly uploads: ReadonlyMap<string, Upload>;
  readonly signal: AbortSignal;
};

/** A method of the Bot API: its result, or a Refusal. */
export type Method = (office: Office, call: Call) => unknown;

const firstIssue = (error: z.ZodError): string => {
  const issue = error.issues[0];
  const name = issue?.path.join(".") ?? "";
  return name === "chat_id" ? "chat_id is empty" : `can't parse "${name}": ${issue?.message ?? "invalid"}`;
};

/** Builds a method from the shape of its parameters; parameters that the shape does not name are ignored. */
export const method =
  <S extends z.ZodType>(
    shape: S,
    run: (office: Office, params: z.output<S>, call: Call) => unknown,
  ): Method =>
  (office, call) => {
    const parsed = shape.safeParse(call.params);
    if (!parsed.success) throw badRequest(firstIssue(parsed.error));
    return run(office, parsed.data, call);
  };

const parsedJson = (value: unknown): unknown => {
  if (typeof value !== "string") return value;
  try {
    return JSON.parse(value);
  } catch {
    return value;
  }
};

/** A number, flag or object that may also come as its JSON in a string, as in forms and query strings. */
export const loose = <S extends z.ZodType>(shape: S) => z.preprocess(parsedJson, shape);

export const looseInteger = loose(z.int());
