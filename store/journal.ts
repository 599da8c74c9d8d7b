import { z } from "zod";
import type { Db } from "./open.ts";

/** The tables whose every change is kept, with their key and the columns that may change. */
const JOURNALED = {
  records: {
    key: "id",
    fields: [
      "kind",
      "component",
      "place",
      "action",
      "materials",
      "date",
      "outcome",
      "exposure",
      "cost",
      "fault",
      "due",
      "done_by",
      "line",
      "closed_by",
      "settled",
      "got",
      "removed",
    ],
  },
  verdicts: { key: "id", fields: ["outcome", "date", "exposure", "removed"] },
  use_log: { key: "id", fields: ["unit", "count", "reading", "date", "removed"] },
  notes: { key: "id", fields: ["text"] },
  settings: { key: "key", fields: ["value"] },
  trips: { key: "id", fields: ["leaves", "returns", "miles", "ticked", "state", "removed"] },
} as const;

export type Thing = keyof typeof JOURNALED;
export type FieldOf<T extends Thing> = (typeof JOURNALED)[T]["fields"][number];
export type Cell = string | number | null;

export type Change = {
  readonly id: number;
  readonly turnId: number;
  readonly at: string;
  readonly thing: Thing;
  readonly thingId: string;
  readonly field: string;
  readonly was: Cell;
  readonly became: Cell;
};

const cell = z
  .string()
  .transform((text) => z.union([z.string(), z.number(), z.null()]).parse(JSON.parse(text)));
const changeRow = z
  .object({
    id: z.number(),
    turn_id: z.number(),
    at: z.string(),
    thing: z.enum(["records", "verdicts", "use_log", "notes", "settings", "trips"]),
    thing_id: z.string(),
    field: z.string(),
    was: cell,
    became: cell,
  })
  .transform(({ turn_id, thing_id, ...rest }): Change => ({ ...rest, turnId: turn_id, thingId: thing_id }));

/** Who changes what, and when: one turn of the conversation. */
export type TurnStamp = { readonly turnId: number; readonly at: string; readonly personId: number | null };

/** Writes changes so that each can be traced and undone. */
export class Journal {
  private readonly db: Db;
  private readonly stamp: TurnStamp;

  constructor(db: Db, stamp: TurnStamp) {
    this.db = db;
    this.stamp = stamp;
  }

  /** Sets one field and keeps what it was. Returns false when nothing changes. */
  set<T extends Thing>(thing: T, id: number | string, field: FieldOf<T>, value: Cell): boolean {
    const was = this.valueOf(thing, id, field);
    if (was === value) return false;
    this.write(thing, id, field, value);
    this.keep(thing, id, field, was, value);
    return true;
  }

  /** Notes that a row was added in this turn; undoing that takes it away again. */
  added(thing: Exclude<Thing, "notes" | "settings">, id: number): void {
    this.keep(thing, id, "removed", 1, 0);
  }

  /**
   * Takes back what a turn changed, newest first. A field that was changed again since stays as it is.
   * The reversal is itself journaled, so that it can be undone too.
   */
  undo(
    turnId: number,
    which: (change: Change) => boolean = () => true,
  ): { readonly reversed: readonly Change[]; readonly kept: readonly Change[] } {
    const changes = changesOf(this.db, turnId).filter(which).reverse();
    const reversible = (change: Change) =>
      this.valueOf(change.thing, change.thingId, change.field) === change.became;
    const reversed: Change[] = [];
    const kept: Change[] = [];
    for (const change of changes) {
      if (!reversible(change)) {
        kept.push(change);
        continue;
      }
      this.write(change.thing, change.thingId, change.field, change.was);
      this.keep(change.thing, change.thingId, change.field, change.became, change.was);
      this.db.prepare("UPDATE changes SET undone_in = ? WHERE id = ?").run(this.stamp.turnId, change.id);
      reversed.push(change);
    }
    return { reversed, kept };
  }

  private valueOf(thing: Thing, id: number | string, field: string): Cell {
    const row = this.db
      .prepare(`SELECT ${column(thing, field)} AS value FROM ${thing} WHERE ${JOURNALED[thing].key} = ?`)
      .get(id);
    return row === undefined
      ? null
      : z.object({ value: z.union([z.string(), z.number(), z.null()]) }).parse(row).value;
  }

  private write(thing: Thing, id: number | string, field: string, value: Cell): void {
    const { key } = JOURNALED[thing];
    if (thing === "settings") {
      this.writeSetting(id, value);
      return;
    }
    this.db.prepare(`UPDATE ${thing} SET ${column(thing, field)} = ? WHERE ${key} = ?`).run(value, id);
  }

  /** A setting without a value is one that was never set. */
  private writeSetting(key: number | string, value: Cell): void {
    if (value === null) this.db.prepare("DELETE FROM settings WHERE key = ?").run(key);
    else
      this.db
        .prepare(
          "INSERT INTO settings (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value",
        )
        .run(key, value);
  }

  private keep(thing: Thing, id: number | string, field: string, was: Cell, became: Cell): void {
    this.db
      .prepare(
        "INSERT INTO changes (turn_id, at, person_id, thing, thing_id, field, was, became) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
      )
      .run(
        this.stamp.turnId,
        this.stamp.at,
        this.stamp.personId,
        thing,
        String(id),
        field,
        JSON.stringify(was),
        JSON.stringify(became),
      );
  }
}

const column = (thing: Thing, field: string): string => {
  const fields: readonly string[] = JOURNALED[thing].fields;
  if (!fields.includes(field)) throw new Error(`${thing}.${field} is not a journaled field.`);
  return `"${field}"`;
};

/** What one turn changed and has not been undone, oldest first. */
export const changesOf = (db: Db, turnId: number): Change[] =>
  db
    .prepare("SELECT * FROM changes WHERE turn_id = ? AND undone_in IS NULL ORDER BY id")
    .all(turnId)
    .map((row) => changeRow.parse(row));
