import { setTimeout as wait } from "node:timers/promises";
import type { Message } from "grammy/types";
import { Temporal } from "temporal-polyfill";
import { MovedClock } from "../../bot/clock.ts";
import { configFrom } from "../../bot/config.ts";
import { pairingCode } from "../../bot/conversation/pair.ts";
import { type Program, startProgram } from "../../bot/program.ts";
import { foundRig } from "../../bot/rig/rig.ts";
import { PageClient } from "./page-client.ts";
import { temporaryFolder } from "./store.ts";

/** A running program and one person at its page; everything goes over HTTP. */
export type Talk = {
  readonly program: Program;
  readonly person: PageClient;
  readonly clock: MovedClock;
  readonly said: string[];
  /** Sends a text and returns the bot's new messages, once it is quiet again. */
  say(text: string, replyTo?: number): Promise<readonly Message[]>;
  /** Taps the newest button with that label; returns what the chat shows that it did not show before. */
  tap(label: string): Promise<readonly Message[]>;
  /** Waits until nothing is on its way. */
  quiet(): Promise<void>;
  stop(): Promise<void>;
};

const config = (home: string) => {
  const read = configFrom({ HOLDFAST_HOME: home, HOLDFAST_PORT: "0", HOLDFAST_LOG: "silent" });
  if (!read.ok) throw new Error(read.problem);
  return read.config;
};

export const START = Temporal.Instant.from("2026-05-14T10:00:00-06:00");

export type TalkOptions = {
  readonly home?: string;
  readonly paired?: boolean;
  /** Lets the small model for trying out listen. */
  readonly sampleModel?: boolean;
};

/** Starts the program on a fresh folder, or on one that is there, by a clock that stands at `START` and runs on. */
export const startTalk = async (options: TalkOptions = {}): Promise<Talk> => {
  const clock = new MovedClock(new Temporal.Duration());
  clock.moveTo(START);
  const said: string[] = [];
  const fatal: unknown[] = [];
  const program = await startProgram(config(options.home ?? temporaryFolder()), {
    clock,
    say: (sentence) => said.push(sentence),
    onFatal: (error) => fatal.push(error),
    scheduler: "by-hand",
    sampleModel: options.sampleModel ?? false,
  });
  foundRig(program.store, { name: "Magpie", zone: "America/Denver", hemisphere: "north" });
  program.store.settings.put("rig.zone", "America/Denver");
  program.store.settings.put("rig.hemisphere", "north");
  const person = new PageClient(program.url);
  await person.enter();

  const quiet = async (): Promise<void> => {
    const { store } = program;
    const pending = () =>
      store.inbox.next() !== undefined ||
      store.outbox.next("page") !== undefined ||
      store.hearings.next("to-fetch") !== undefined ||
      (options.sampleModel === true && store.hearings.next("to-hear") !== undefined);
    const number = (sql: string) => Number(store.db.prepare(sql).pluck().get());
    const given = () =>
      number("SELECT coalesce((SELECT seq FROM sqlite_sequence WHERE name = 'chat_updates'), 0)");
    const taken = () => number("SELECT coalesce(max(update_id), 0) FROM inbox WHERE channel = 'page'");
    for (let calm = 0; calm < 3; ) {
      await wait(8);
      if (fatal.length > 0) throw new Error("The program had to stop.", { cause: fatal[0] });
      calm = pending() || given() > taken() ? 0 : calm + 1;
    }
  };

  const after = async (act: () => Promise<unknown>): Promise<readonly Message[]> => {
    const before = new Map(
      (await person.messages()).map((message) => [message.message_id, JSON.stringify(message)]),
    );
    await act();
    await quiet();
    const now = await person.messages();
    return now.filter(
      (message) =>
        message.from?.is_bot === true && before.get(message.message_id) !== JSON.stringify(message),
    );
  };

  const talk: Talk = {
    program,
    person,
    clock,
    said,
    say: (text, replyTo) => after(() => person.say(text, undefined, replyTo)),
    tap: async (label) => {
      const messages = await person.messages();
      for (const message of messages.toReversed()) {
        const button = message.reply_markup?.inline_keyboard.flat().find(({ text }) => text === label);
        if (button !== undefined && "callback_data" in button) {
          const { callback_data: data } = button;
          return after(() => person.tap(message.message_id, data));
        }
      }
      throw new Error(`No message shows a button "${label}".`);
    },
    quiet,
    stop: () => program.stop(),
  };
  if (options.paired !== false) await talk.say(pairingCode(program.store));
  return talk;
};

export const textOf = (messages: readonly Message[]): string =>
  messages.map(({ text }) => text ?? "").join("\n---\n");

export const labelsOf = (messages: readonly Message[]): readonly string[] =>
  messages.flatMap((message) => message.reply_markup?.inline_keyboard.flat().map(({ text }) => text) ?? []);
