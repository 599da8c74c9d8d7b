import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterAll, expect, it } from "vitest";
import type { ChatLog } from "../../bot/chat/chat-log.ts";
import { createChatLog } from "../../store/chat-log.ts";
import { chat } from "../../store/migrations/0002-chat.ts";
import { chatLogContract } from "../bot/chat/chat-log-contract.ts";

const folder = mkdtempSync(join(tmpdir(), "holdfast-chat-log-"));
const open: Database.Database[] = [];
afterAll(() => {
  for (const db of open) db.close();
  rmSync(folder, { recursive: true, force: true });
});

const database = (file: string) => {
  const db = new Database(file);
  db.pragma("journal_mode = WAL");
  db.pragma("foreign_keys = ON");
  open.push(db);
  return db;
};

const fresh = (): { log: ChatLog; file: string } => {
  const file = join(folder, `${open.length}.db`);
  const db = database(file);
  db.exec(chat.up);
  return { log: createChatLog(db), file };
};

chatLogContract("the store", () => fresh().log);

it("is there again after the file is opened anew", () => {
  const { log, file } = fresh();
  const person = log.addPerson("hash", "Wren");
  const row = log.addMessage(person.chat, '{"text":"greased the jack"}', "once");
  const update = log.addUpdate("message", "{}");
  open.at(-1)?.close();
  const again: ChatLog = createChatLog(database(file));
  expect(again.personBySecret("hash")).toEqual(person);
  expect(again.messageByOnce("once")).toEqual(row);
  expect(again.updatesFrom(0, 10)).toEqual([update]);
  again.confirmUpdates(update.id + 1);
  expect(again.addUpdate("message", "{}").id).toBe(update.id + 1);
});

it("finds a page of history and what changed by an index, however long the chat", () => {
  const db = database(join(folder, `${open.length}.db`));
  db.exec(chat.up);
  const asked: string[] = [];
  const prepare = db.prepare.bind(db);
  db.prepare = (sql: string) => {
    asked.push(sql);
    return prepare(sql);
  };
  createChatLog(db);
  const pages = asked.filter((sql) => /FROM chat_messages WHERE chat = \?/.test(sql));
  expect(pages).toHaveLength(2);
  for (const sql of pages) {
    const given = (sql.match(/\?/g) ?? []).map(() => 1);
    const steps = prepare(`EXPLAIN QUERY PLAN ${sql}`).all(...given) as { detail: string }[];
    expect(steps.map(({ detail }) => detail)).toEqual([expect.stringMatching(/^SEARCH chat_messages USING/)]);
  }
});
