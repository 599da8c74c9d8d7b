import { mkdtempSync, rmSync } from "node:fs";
import { Agent } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Api } from "grammy";
import { afterEach } from "vitest";
import type { ChatLog } from "../../../bot/chat/chat-log.ts";
import { memoryChatLog } from "../../../bot/chat/memory-chat-log.ts";
import { type ChatServer, createChatServer } from "../../../bot/chat/server.ts";

export const TOKEN = "77:a-secret-of-the-test";

const ends: (() => Promise<void> | void)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

export const atEnd = (end: () => Promise<void> | void): void => void ends.push(end);

export const temporaryFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), "holdfast-chat-"));
  atEnd(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};

export type Opened = {
  readonly server: ChatServer;
  readonly url: string;
  readonly apiRoot: string;
  readonly elsewhere: readonly string[];
  readonly api: Api;
  readonly log: ChatLog;
  readonly faults: unknown[];
};

/** grammY keeps connections by address: a server that came back on its old port would be met on a dead one. */
const freshApi = (apiRoot: string): Api =>
  new Api(TOKEN, { apiRoot, baseFetchConfig: { compress: true, agent: new Agent() } });

/** A chat server on a free port with grammY's own client; it stops when the test ends. */
export const openChat = async (
  options: { log?: ChatLog; filesDir?: string; host?: string; now?: () => number; port?: number } = {},
): Promise<Opened> => {
  const { log = memoryChatLog(), filesDir = temporaryFolder(), port = 0, ...rest } = options;
  const faults: unknown[] = [];
  const server = createChatServer({
    log,
    filesDir,
    token: TOKEN,
    port,
    ...rest,
    onFault: (error) => void faults.push(error),
  });
  const started = await server.start();
  atEnd(() => server.stop());
  return { server, ...started, api: freshApi(started.apiRoot), log, faults };
};

let keys = 0;

/** A fresh key for something a person does. */
export const freshKey = (): string => {
  keys += 1;
  return `key-of-test-${keys}`;
};

/** The refusal of a call in the Bot API's words, with its code in front. */
export const refusalOf = async (call: Promise<unknown>): Promise<string> => {
  try {
    await call;
    return "no refusal";
  } catch (error) {
    const { error_code: code, description } = error as { error_code?: number; description?: string };
    if (code === undefined) throw error;
    return `${code} ${description ?? ""}`;
  }
};

/** A picture of one pixel. */
export const ONE_PIXEL = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==",
  "base64",
);
