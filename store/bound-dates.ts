import { z } from "zod";
import type { Hemisphere } from "../shared/reading.ts";
import { dayBounds } from "./days.ts";
import type { Db } from "./open.ts";

type Dated = "records" | "use_log";

const datedRow = z.object({ id: z.number(), date: z.string().nullable(), said_at: z.string() });

const writeBounds = (db: Db, table: Dated, row: z.infer<typeof datedRow>, hemisphere: Hemisphere): void => {
  const { from, to } = dayBounds(row.date, hemisphere);
  db.prepare(`UPDATE ${table} SET date_from = ?, date_to = ? WHERE id = ?`).run(from, to, row.id);
  if (table === "records") {
    db.prepare("UPDATE records SET sort_day = ? WHERE id = ?").run(to ?? row.said_at.slice(0, 10), row.id);
  }
};

/** Writes the day bounds of one row's date beside it, for searching. */
export const boundDate = (db: Db, table: Dated, id: number, hemisphere: Hemisphere): void => {
  const row = datedRow.parse(db.prepare(`SELECT id, date, said_at FROM ${table} WHERE id = ?`).get(id));
  writeBounds(db, table, row, hemisphere);
};

export const boundAllDates = (db: Db, hemisphere: Hemisphere): void => {
  for (const table of ["records", "use_log"] as const) {
    const rows = db.prepare(`SELECT id, date, said_at FROM ${table} WHERE date IS NOT NULL`).all();
    for (const row of rows) writeBounds(db, table, datedRow.parse(row), hemisphere);
  }
};
