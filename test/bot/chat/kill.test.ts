import { spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import Database from "better-sqlite3";
import { expect, it } from "vitest";
import { createChatLog } from "../../../store/chat-log.ts";
import { chat } from "../../../store/migrations/0002-chat.ts";
import { atEnd, openChat, TOKEN, temporaryFolder } from "./harness.ts";

const KILLS = 6;

const startChild = async (file: string, filesDir: string) => {
  const script = join(import.meta.dirname, "kill-child.ts");
  const child = spawn(process.execPath, ["--import", "tsx", script, file, filesDir, TOKEN]);
  atEnd(() => void child.kill("SIGKILL"));
  const [first] = (await once(child.stdout, "data")) as [Buffer];
  return { child, url: first.toString().trim() };
};

const cookieOf = async (url: string) => {
  const response = await fetch(`${url}page/hello`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: "{}",
  });
  return response.headers.get("set-cookie")?.split(";", 1)[0] ?? "";
};

/** Says one thing after the other until the server is gone; gives what was acknowledged. */
const talk = async (url: string, cookie: string, round: number): Promise<string[]> => {
  const acknowledged: string[] = [];
  for (let count = 0; ; count += 1) {
    const text = `${round}.${count}`;
    const body = JSON.stringify({ key: `key-${round}-${String(count).padStart(6, "0")}`, text });
    const headers = { "content-type": "application/json", cookie };
    const response = await fetch(`${url}page/say`, { method: "POST", headers, body }).catch(() => undefined);
    if (!response?.ok) return acknowledged;
    acknowledged.push(text);
  }
};

it(`loses nothing it acknowledged, killed ${KILLS} times in the middle of talk`, async () => {
  const folder = temporaryFolder();
  const file = join(folder, "chat.db");
  const db = new Database(file);
  atEnd(() => void db.close());
  db.pragma("journal_mode = WAL");
  db.exec(chat.up);
  const acknowledged: string[] = [];
  for (let round = 0; round < KILLS; round += 1) {
    const { child, url } = await startChild(file, folder);
    const talking = talk(url, await cookieOf(url), round);
    await sleep(60 + ((round * 37) % 90));
    child.kill("SIGKILL");
    acknowledged.push(...(await talking));
  }
  const { api } = await openChat({ log: createChatLog(db), filesDir: folder });
  const kept: string[] = [];
  for (let offset = 0; ; ) {
    const updates = await api.getUpdates({ offset });
    if (updates.length === 0) break;
    kept.push(...updates.map((update) => update.message?.text ?? ""));
    offset = (updates.at(-1)?.update_id ?? 0) + 1;
  }
  expect(acknowledged.length).toBeGreaterThan(KILLS);
  expect(new Set(kept).size).toBe(kept.length);
  expect(acknowledged.filter((text) => !kept.includes(text))).toEqual([]);
  expect(kept.length - acknowledged.length).toBeLessThanOrEqual(KILLS);
});
