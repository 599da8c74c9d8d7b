import { cp, mkdir, rename, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import Database from "better-sqlite3";
import { DATABASE_FILE, holdFolder, openDatabase } from "./open.ts";
import { StoreProblem } from "./problem.ts";

const MEDIA = "media";

const exists = async (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  );

/** Copies the database, whole also while it is in use, and the sounds and photos into a new folder. */
export const backUp = async (home: string, folder: string): Promise<void> => {
  const source = join(home, DATABASE_FILE);
  if (!(await exists(source)))
    throw new StoreProblem("no-folder", `There is nothing to back up in ${home} yet.`);
  if (await exists(folder))
    throw new StoreProblem("no-folder", `${folder} is there already. Name a new folder.`);
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const db = new Database(source, { readonly: true });
  try {
    await db.backup(join(folder, DATABASE_FILE));
  } finally {
    db.close();
  }
  if (await exists(join(home, MEDIA))) await cp(join(home, MEDIA), join(folder, MEDIA), { recursive: true });
};

/**
 * Puts a backup in the place of the data. The program must not be running; what was there is moved aside, and its new
 * place is returned.
 */
export const restore = async (home: string, folder: string, stamp: string): Promise<string | null> => {
  const backup = join(folder, DATABASE_FILE);
  if (!(await exists(backup)))
    throw new StoreProblem("no-folder", `${folder} holds no backup: ${DATABASE_FILE} is missing.`);
  const lock = holdFolder(home);
  try {
    const fresh = join(home, `restoring-${stamp}`);
    await cp(folder, fresh, { recursive: true });
    try {
      openDatabase(join(fresh, DATABASE_FILE), { check: true }).close();
    } catch (error) {
      await rm(fresh, { recursive: true });
      throw error;
    }
    const aside = await moveAside(home, stamp);
    for (const part of [DATABASE_FILE, MEDIA]) {
      if (await exists(join(fresh, part))) await rename(join(fresh, part), join(home, part));
    }
    await rm(fresh, { recursive: true });
    return aside;
  } finally {
    lock.release();
  }
};

const PARTS = [DATABASE_FILE, `${DATABASE_FILE}-wal`, `${DATABASE_FILE}-shm`, MEDIA];

const moveAside = async (home: string, stamp: string): Promise<string | null> => {
  if (!(await exists(join(home, DATABASE_FILE)))) return null;
  const aside = join(home, `before-restore-${stamp}`);
  await mkdir(aside, { recursive: true, mode: 0o700 });
  for (const part of PARTS) {
    if (await exists(join(home, part))) await rename(join(home, part), join(aside, part));
  }
  return aside;
};
