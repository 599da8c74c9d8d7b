import type { Migration } from "./migration.ts";

/** What was to be bought may have been got, while the job is still to do. */
export const got: Migration = {
  id: 3,
  name: "got",
  up: "ALTER TABLE records ADD COLUMN got INTEGER NOT NULL DEFAULT 0;",
};
