import { chmodSync, mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import Database from "better-sqlite3";
import { migrate } from "./migrate.ts";
import { asStoreProblem, StoreProblem } from "./problem.ts";

export type Db = Database.Database;

export const DATABASE_FILE = "holdfast.db";

const worded = <T>(file: string, work: () => T): T => {
  try {
    return work();
  } catch (error) {
    throw asStoreProblem(error, file) ?? error;
  }
};

/** The same words are prepared once: with few statements and many messages, preparing was the dearest step. */
const prepareOnce = (db: Db): void => {
  const prepared = new Map<string, Database.Statement>();
  const prepare = db.prepare.bind(db);
  db.prepare = ((sql: string) => {
    const known = prepared.get(sql);
    if (known !== undefined && !known.busy) return known;
    const statement = prepare(sql);
    prepared.set(sql, statement);
    return statement;
  }) as typeof db.prepare;
};

const prepare = (db: Db): Db => {
  prepareOnce(db);
  db.pragma("journal_mode = WAL");
  db.pragma("synchronous = FULL");
  db.pragma("foreign_keys = ON");
  db.pragma("busy_timeout = 2000");
  migrate(db);
  return db;
};

const sound = (db: Db, file: string): void => {
  if (db.pragma("quick_check(1)", { simple: true }) === "ok") return;
  throw new StoreProblem(
    "corrupt",
    `${file} is damaged and was left untouched. Restore a backup: npm run restore -- BACKUP.`,
  );
};

/** Opens a database file that only its owner may read, or one in memory (":memory:"). Throws StoreProblem. */
export const openDatabase = (file: string, options: { check?: boolean } = {}): Db =>
  worded(file, () => {
    if (file !== ":memory:") mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    const db = new Database(file);
    try {
      if (file !== ":memory:") chmodSync(file, 0o600);
      prepare(db);
      if (options.check === true) sound(db, file);
      return db;
    } catch (error) {
      db.close();
      throw error;
    }
  });

/** Holds the data folder for this process until it ends, however it ends. Throws StoreProblem "in-use". */
export const holdFolder = (folder: string): { release(): void } => {
  const file = join(folder, "holdfast.lock");
  return worded(file, () => {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const lock = new Database(file, { timeout: 0 });
    try {
      lock.exec("BEGIN EXCLUSIVE");
    } catch (error) {
      lock.close();
      if (String(error).includes("locked")) {
        throw new StoreProblem(
          "in-use",
          `Holdfast is already running on ${folder}. Stop it first, or set HOLDFAST_HOME to another folder.`,
        );
      }
      throw error;
    }
    return { release: () => void lock.close() };
  });
};
