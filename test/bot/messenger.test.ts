import { setTimeout as wait } from "node:timers/promises";
import { afterEach, describe, expect, it } from "vitest";
import { memoryChatLog } from "../../bot/chat/memory-chat-log.ts";
import { type ChatServer, createChatServer } from "../../bot/chat/server.ts";
import { machineClock } from "../../bot/clock.ts";
import { configFrom } from "../../bot/config.ts";
import { pairingCode } from "../../bot/conversation/pair.ts";
import { createLog, redactor } from "../../bot/log.ts";
import { type Program, startProgram } from "../../bot/program.ts";
import { temporaryFolder } from "../help/store.ts";

const TOKEN = "424242:a-token-that-nobody-should-ever-see-in-a-log";

const stops: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0).toReversed()) await stop();
});

/** A messenger on this machine: the same Bot API, another token. */
const startMessenger = async (token: string, port = 0): Promise<ChatServer & { apiRoot: string }> => {
  const server = createChatServer({ log: memoryChatLog(), token, filesDir: temporaryFolder(), port });
  const { apiRoot } = await server.start();
  stops.push(() => server.stop());
  return { ...server, apiRoot };
};

const startWith = async (apiRoot: string): Promise<{ program: Program; said: string[] }> => {
  const read = configFrom({
    HOLDFAST_HOME: temporaryFolder(),
    HOLDFAST_PORT: "0",
    HOLDFAST_TOKEN: TOKEN,
    HOLDFAST_API_ROOT: apiRoot,
    HOLDFAST_LOG: "silent",
  });
  if (!read.ok) throw new Error(read.problem);
  const said: string[] = [];
  const program = await startProgram(read.config, {
    clock: machineClock,
    say: (sentence) => said.push(sentence),
    onFatal: (error) => said.push(String(error)),
    scheduler: "by-hand",
  });
  stops.push(() => program.stop());
  return { program, said };
};

const until = async (holds: () => boolean): Promise<void> => {
  while (!holds()) await wait(20);
};

/** Below the ports that a system gives out by itself, so that no other test gets it meanwhile. */
const NOBODYS_PORT = 20_000 + (process.pid % 10_000);

describe("with a token", () => {
  it("the same conversation runs on the messenger", async () => {
    const messenger = await startMessenger(TOKEN);
    const { program } = await startWith(messenger.apiRoot);
    const { person } = messenger.join("Tomas");
    messenger.people.say(person, { key: "pairing-key", text: pairingCode(program.store) });
    messenger.people.say(person, { key: "first-note-key", text: "greased the wheel bearings today" });
    await until(() => program.store.history.records({}).length === 1);
    expect(program.store.history.records({})[0]?.saidBy).toBe("Tomas");
  });

  it("that is wrong says so and goes on with the page", async () => {
    const messenger = await startMessenger("424242:quite-another-token-than-the-one-given");
    const { said, program } = await startWith(messenger.apiRoot);
    await until(() => said.length > 0);
    expect(said).toEqual([expect.stringContaining("Check HOLDFAST_TOKEN")]);
    expect((await fetch(program.url)).status).toBe(200);
  });

  it("and no network says so once, keeps trying and takes up where it left", async () => {
    const { said, program } = await startWith(`http://127.0.0.1:${String(NOBODYS_PORT)}`);
    await until(() => said.length > 0);
    expect(said).toEqual([expect.stringContaining("can't be reached")]);
    const back = await startMessenger(TOKEN, NOBODYS_PORT);
    const { person } = back.join("Tomas");
    back.people.say(person, { key: "pairing-key", text: pairingCode(program.store) });
    await until(() => program.store.people.chats().length === 1);
    expect(said).toContain("Connected again.");
  });
});

describe("the token", () => {
  it("that cannot be one is refused without being repeated", () => {
    const read = configFrom({ HOLDFAST_TOKEN: "secret-but-malformed" });
    expect(read.ok).toBe(false);
    expect(JSON.stringify(read)).not.toContain("secret-but-malformed");
  });

  it("appears in no log, wherever it is put", () => {
    const lines: string[] = [];
    const log = createLog("debug", [TOKEN], { write: (line: string) => void lines.push(line) });
    log.info({ url: `https://host/bot${TOKEN}/getUpdates` }, `asked /bot${TOKEN}/getMe`);
    log.error({ fault: new Error(`request to /bot${TOKEN}/x failed`) }, "a fault");
    log.warn(`plain ${TOKEN}`);
    expect(lines).toHaveLength(3);
    expect(lines.join("\n")).not.toContain(TOKEN);
    expect(redactor([TOKEN])(`a ${TOKEN} b`)).toBe("a [token] b");
  });
});
