import { z } from "zod";
import type { Db } from "./open.ts";

/** Plain keyed values, JSON in the table. Who may change what is the caller's matter. */
export class SettingsTable {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  get(key: string): unknown {
    const text = z
      .string()
      .optional()
      .parse(this.db.prepare("SELECT value FROM settings WHERE key = ?").pluck().get(key));
    return text === undefined ? undefined : JSON.parse(text);
  }

  /** Sets a value without a trace, for what the program keeps for itself; people's settings go through the Keeper. */
  put(key: string, value: unknown): void {
    this.db
      .prepare(
        "INSERT INTO settings (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value",
      )
      .run(key, JSON.stringify(value));
  }
}
