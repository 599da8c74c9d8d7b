import { z } from "zod";
import type { Db } from "./open.ts";

export type Trip = {
  readonly id: number;
  /** ISO days. */
  readonly leaves: string;
  readonly returns: string | null;
  readonly miles: number | null;
  /** Keys of the departure list's lines that are done. */
  readonly ticked: readonly string[];
  readonly state: "ahead" | "over";
};

const tripRow = z.object({
  id: z.number(),
  leaves: z.string(),
  returns: z.string().nullable(),
  miles: z.number().nullable(),
  ticked: z.string().transform((text) => z.array(z.string()).parse(JSON.parse(text))),
  state: z.enum(["ahead", "over"]),
});

export class Trips {
  private readonly db: Db;

  constructor(db: Db) {
    this.db = db;
  }

  /** The announced trip that is not over. */
  current(): Trip | undefined {
    const row = this.db
      .prepare("SELECT * FROM trips WHERE removed = 0 AND state = 'ahead' ORDER BY id DESC LIMIT 1")
      .get();
    return row === undefined ? undefined : tripRow.parse(row);
  }
}
