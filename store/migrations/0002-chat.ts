import type { Migration } from "./migration.ts";

/** The embedded chat's own memory: apart from the records, so that a messenger can take its place. */
export const chat: Migration = {
  id: 2,
  name: "chat",
  up: `
    CREATE TABLE chat_people (
      chat INTEGER PRIMARY KEY AUTOINCREMENT, secret_hash TEXT NOT NULL UNIQUE, name TEXT NOT NULL
    );
    INSERT INTO sqlite_sequence (name, seq) VALUES ('chat_people', 1000);

    CREATE TABLE chat_messages (
      id INTEGER PRIMARY KEY AUTOINCREMENT, chat INTEGER NOT NULL REFERENCES chat_people (chat),
      change INTEGER NOT NULL UNIQUE, body TEXT, once TEXT UNIQUE
    );
    CREATE INDEX chat_messages_by_chat ON chat_messages (chat, id);
    CREATE INDEX chat_messages_by_change ON chat_messages (chat, change);

    CREATE TABLE chat_updates (id INTEGER PRIMARY KEY AUTOINCREMENT, kind TEXT NOT NULL, body TEXT NOT NULL);

    CREATE TABLE chat_taps (id TEXT PRIMARY KEY, chat INTEGER NOT NULL REFERENCES chat_people (chat)) WITHOUT ROWID;

    CREATE TABLE chat_files (
      id TEXT PRIMARY KEY, path TEXT NOT NULL, name TEXT NOT NULL, mime TEXT NOT NULL, size INTEGER NOT NULL
    ) WITHOUT ROWID;

    CREATE TABLE chat_commands (only INTEGER PRIMARY KEY CHECK (only = 1), json TEXT NOT NULL);
  `,
};
