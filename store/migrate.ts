import type { Database } from "better-sqlite3";
import { z } from "zod";
import { MIGRATIONS, type Migration } from "./migrations/index.ts";
import { StoreProblem } from "./problem.ts";

const versionSchema = z.number().int().nonnegative();

/** Brings the schema up to the newest migration, each in its own transaction. Throws StoreProblem "too-new". */
export const migrate = (db: Database, migrations: readonly Migration[] = MIGRATIONS): void => {
  const version = versionSchema.parse(db.pragma("user_version", { simple: true }));
  if (version > migrations.length) {
    throw new StoreProblem(
      "too-new",
      `The data were written by a newer Holdfast (schema ${version}). Update the program.`,
    );
  }
  for (const migration of migrations.filter((each) => each.id > version)) {
    db.transaction(() => {
      db.exec(migration.up);
      db.pragma(`user_version = ${migration.id}`);
    })();
  }
};
