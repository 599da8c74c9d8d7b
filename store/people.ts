import { z } from "zod";
import type { Db } from "./open.ts";

export type Person = { readonly id: number; readonly name: string };
export type Chat = { readonly channel: string; readonly chatId: number };

const personRow = z.object({ id: z.number(), name: z.string() });
const chatRow = z
  .object({ channel: z.string(), chat_id: z.number() })
  .transform((row): Chat => ({ channel: row.channel, chatId: row.chat_id }));

/** Who is heard: people, each paired through one or more chats. */
export class People {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  pair({ channel, chatId }: Chat, name: string, at: string): Person {
    const { lastInsertRowid } = this.db
      .prepare("INSERT INTO people (name, since) VALUES (?, ?)")
      .run(name, at);
    const id = Number(lastInsertRowid);
    this.db
      .prepare("INSERT INTO chats (channel, chat_id, person_id) VALUES (?, ?, ?)")
      .run(channel, chatId, id);
    return { id, name };
  }

  of({ channel, chatId }: Chat): Person | undefined {
    const row = this.db
      .prepare(
        "SELECT people.id, people.name FROM chats JOIN people ON people.id = chats.person_id WHERE channel = ? AND chat_id = ?",
      )
      .get(channel, chatId);
    return row === undefined ? undefined : personRow.parse(row);
  }

  chats(): readonly Chat[] {
    return this.db
      .prepare("SELECT channel, chat_id FROM chats ORDER BY person_id")
      .all()
      .map((row) => chatRow.parse(row));
  }
}
