import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { backUp, restore } from "../../store/backup.ts";
import { DATABASE_FILE, holdFolder, openDatabase } from "../../store/open.ts";
import { asStoreProblem, StoreProblem } from "../../store/problem.ts";
import { Store } from "../../store/store.ts";
import { draft, keeping, pairedStore, temporaryFolder } from "../help/store.ts";

const problemOf = (work: () => unknown): StoreProblem => {
  try {
    work();
  } catch (error) {
    if (error instanceof StoreProblem) return error;
    throw error;
  }
  throw new Error("It should have failed.");
};

describe("the database file", () => {
  it("is private to its owner and in WAL mode", () => {
    const file = join(temporaryFolder(), "home", DATABASE_FILE);
    const db = openDatabase(file);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(db.pragma("journal_mode", { simple: true })).toBe("wal");
    db.close();
  });

  it("that is no database is refused and left untouched", () => {
    const file = join(temporaryFolder(), DATABASE_FILE);
    writeFileSync(file, "this is not a database, but somebody's shopping list, long enough to be looked at");
    const before = readFileSync(file);
    expect(problemOf(() => openDatabase(file)).kind).toBe("corrupt");
    expect(readFileSync(file)).toEqual(before);
  });

  it("with a damaged page is refused", () => {
    const file = join(temporaryFolder(), DATABASE_FILE);
    const store = pairedStore(file);
    store.db.pragma("wal_checkpoint(TRUNCATE)");
    store.close();
    const bytes = readFileSync(file);
    bytes.fill(0xff, 4096 * 2, 4096 * 6);
    writeFileSync(file, bytes);
    expect(problemOf(() => openDatabase(file, { check: true })).kind).toBe("corrupt");
  });

  it("of a newer program is refused", () => {
    const file = join(temporaryFolder(), DATABASE_FILE);
    const db = openDatabase(file);
    db.pragma("user_version = 9999");
    db.close();
    expect(problemOf(() => openDatabase(file))).toMatchObject({ kind: "too-new" });
  });

  it("in a place that is no folder gets a clear sentence", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "home"), "a file where a folder should be");
    expect(problemOf(() => openDatabase(join(folder, "home", DATABASE_FILE))).message).toContain(
      "HOLDFAST_HOME",
    );
  });

  it.each(["EROFS", "EACCES", "SQLITE_READONLY_DIRECTORY"])(
    "that cannot be written (%s) gets a clear sentence",
    (code) => {
      const problem = asStoreProblem(Object.assign(new Error("refused"), { code }), "holdfast.db");
      expect(problem?.kind).toBe("read-only");
      expect(problem?.message).toContain("HOLDFAST_HOME");
    },
  );

  it("that fills up says so and keeps what it had", () => {
    const store = pairedStore(join(temporaryFolder(), DATABASE_FILE));
    const { keeper, noteId, saidAt } = keeping(store);
    const id = keeper.addRecord(noteId, saidAt, draft(), "new");
    store.db.pragma(`max_page_count = ${Number(store.db.pragma("page_count", { simple: true }))}`);
    const flood = () => store.transact(() => keeping(store, "words ".repeat(100_000)));
    expect(flood).toThrow(/full/);
    expect(store.history.record(id)?.fields.component).toBe("gray-tank");
  });
});

describe("a data folder", () => {
  it("belongs to one process at a time", () => {
    const folder = temporaryFolder();
    const held = holdFolder(folder);
    expect(problemOf(() => holdFolder(folder)).kind).toBe("in-use");
    held.release();
    holdFolder(folder).release();
  });
});

describe("a backup", () => {
  const filled = () => {
    const home = temporaryFolder();
    const store = pairedStore(join(home, DATABASE_FILE));
    const { keeper, noteId, saidAt } = keeping(store);
    keeper.addRecord(noteId, saidAt, draft(), "new");
    mkdirSync(join(home, "media"));
    writeFileSync(join(home, "media", "voice.ogg"), "sound");
    return { home, store };
  };

  it("is taken while the program runs, and brings everything back", async () => {
    const { home, store } = filled();
    const folder = join(temporaryFolder(), "backup");
    await backUp(home, folder);
    keeping(store).keeper.remove(1);
    store.close();
    writeFileSync(join(home, "media", "voice.ogg"), "spoiled");
    const aside = await restore(home, folder, "now");
    const again = new Store(openDatabase(join(home, DATABASE_FILE)));
    expect(again.history.record(1)?.removed).toBe(false);
    expect(readFileSync(join(home, "media", "voice.ogg"), "utf8")).toBe("sound");
    expect(aside !== null && existsSync(join(aside, DATABASE_FILE))).toBe(true);
  });

  it("is not put over data that are in use", async () => {
    const { home } = filled();
    const folder = join(temporaryFolder(), "backup");
    await backUp(home, folder);
    const held = holdFolder(home);
    await expect(restore(home, folder, "now")).rejects.toMatchObject({ kind: "in-use" });
    held.release();
  });

  it("that is damaged changes nothing", async () => {
    const { home, store } = filled();
    store.close();
    const folder = temporaryFolder();
    writeFileSync(
      join(folder, DATABASE_FILE),
      "not a database at all, just words that someone put here".repeat(3),
    );
    await expect(restore(home, folder, "now")).rejects.toMatchObject({ kind: "corrupt" });
    expect(new Store(openDatabase(join(home, DATABASE_FILE))).history.records({})).toHaveLength(1);
  });
});
