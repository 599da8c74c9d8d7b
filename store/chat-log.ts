import type { Database } from "better-sqlite3";

type PersonRow = { chat: number; name: string };
type MessageRow = { id: number; chat: number; change: number; body: string | null };
type UpdateRow = { id: number; kind: string; body: string };
type FileRow = { id: string; path: string; name: string; mime: string; size: number };

const people = (db: Database) => {
  const add = db.prepare<[string, string], PersonRow>(
    "INSERT INTO chat_people (secret_hash, name) VALUES (?, ?) RETURNING chat, name",
  );
  const bySecret = db.prepare<[string], PersonRow>(
    "SELECT chat, name FROM chat_people WHERE secret_hash = ?",
  );
  const byChat = db.prepare<[number], PersonRow>("SELECT chat, name FROM chat_people WHERE chat = ?");
  const rename = db.prepare<[string, number]>("UPDATE chat_people SET name = ? WHERE chat = ?");
  return {
    addPerson: (secretHash: string, name: string) => returned(add.get(secretHash, name)),
    personBySecret: (secretHash: string) => bySecret.get(secretHash),
    person: (chat: number) => byChat.get(chat),
    renamePerson: (chat: number, name: string) => void rename.run(name, chat),
  };
};

const returned = <T>(row: T | undefined): T => {
  if (row === undefined) throw new Error("no such row");
  return row;
};

const NEXT_CHANGE = "(SELECT coalesce(max(change), 0) + 1 FROM chat_messages)";
const COLUMNS = "id, chat, change, body";

const messages = (db: Database) => {
  const add = db.prepare<[number, string, string | null], MessageRow>(
    `INSERT INTO chat_messages (chat, change, body, once) VALUES (?, ${NEXT_CHANGE}, ?, ?) RETURNING ${COLUMNS}`,
  );
  const set = db.prepare<[string | null, number], MessageRow>(
    `UPDATE chat_messages SET body = ?, change = ${NEXT_CHANGE} WHERE id = ? RETURNING ${COLUMNS}`,
  );
  const byId = db.prepare<[number], MessageRow>(`SELECT ${COLUMNS} FROM chat_messages WHERE id = ?`);
  const byOnce = db.prepare<[string], MessageRow>(`SELECT ${COLUMNS} FROM chat_messages WHERE once = ?`);
  const before = db.prepare<[number, number, number], MessageRow>(
    `SELECT ${COLUMNS} FROM chat_messages WHERE chat = ? AND id < ? AND body IS NOT NULL ORDER BY id DESC LIMIT ?`,
  );
  const after = db.prepare<[number, number], MessageRow>(
    `SELECT ${COLUMNS} FROM chat_messages WHERE chat = ? AND change > ? ORDER BY change`,
  );
  const last = db.prepare<[], { change: number }>(
    "SELECT coalesce(max(change), 0) AS change FROM chat_messages",
  );
  return {
    addMessage: (chat: number, body: string, once: string | null) => returned(add.get(chat, body, once)),
    setMessage: (id: number, body: string | null) => returned(set.get(body, id)),
    message: (id: number) => byId.get(id),
    messageByOnce: (once: string) => byOnce.get(once),
    messagesBefore: (chat: number, id: number, limit: number) => before.all(chat, id, limit).reverse(),
    changesAfter: (chat: number, change: number) => after.all(chat, change),
    lastChange: () => last.get()?.change ?? 0,
  };
};

const updates = (db: Database) => {
  const add = db.prepare<[string, string], UpdateRow>(
    "INSERT INTO chat_updates (kind, body) VALUES (?, ?) RETURNING id, kind, body",
  );
  const from = db.prepare<[number, number], UpdateRow>(
    "SELECT id, kind, body FROM chat_updates WHERE id >= ? ORDER BY id LIMIT ?",
  );
  const last = db.prepare<[number], UpdateRow>(
    "SELECT id, kind, body FROM chat_updates ORDER BY id DESC LIMIT ?",
  );
  const confirm = db.prepare<[number]>("DELETE FROM chat_updates WHERE id < ?");
  return {
    addUpdate: (kind: string, body: string) => returned(add.get(kind, body)),
    updatesFrom: (id: number, limit: number) => from.all(id, limit),
    lastUpdates: (count: number) => last.all(count).reverse(),
    confirmUpdates: (id: number) => void confirm.run(id),
  };
};

const taps = (db: Database) => {
  const add = db.prepare<[string, number]>("INSERT OR IGNORE INTO chat_taps (id, chat) VALUES (?, ?)");
  const find = db.prepare<[string], { chat: number }>("SELECT chat FROM chat_taps WHERE id = ?");
  return {
    addTap: (id: string, chat: number) => add.run(id, chat).changes === 1,
    tapChat: (id: string) => find.get(id)?.chat,
  };
};

const files = (db: Database) => {
  const add = db.prepare<FileRow>(
    "INSERT INTO chat_files (id, path, name, mime, size) VALUES (@id, @path, @name, @mime, @size)",
  );
  const find = db.prepare<[string], FileRow>(
    "SELECT id, path, name, mime, size FROM chat_files WHERE id = ?",
  );
  return { addFile: (file: Readonly<FileRow>) => void add.run(file), file: (id: string) => find.get(id) };
};

const commands = (db: Database) => {
  const set = db.prepare<[string]>(
    "INSERT INTO chat_commands (only, json) VALUES (1, ?) ON CONFLICT (only) DO UPDATE SET json = excluded.json",
  );
  const get = db.prepare<[], { json: string }>("SELECT json FROM chat_commands");
  return { setCommands: (json: string) => void set.run(json), commands: () => get.get()?.json };
};

/** The embedded chat's memory in the database; the program's chat declares what it must offer. */
export const createChatLog = (db: Database) => ({
  atomically: <T>(work: () => T): T => db.transaction(work).immediate(),
  ...people(db),
  ...messages(db),
  ...updates(db),
  ...taps(db),
  ...files(db),
  ...commands(db),
});
