import { randomUUID } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { Temporal } from "temporal-polyfill";
import { MovedClock } from "../clock.ts";
import type { Config } from "../config.ts";
import { pairingCode } from "../conversation/pair.ts";
import { nextNudgeTime } from "../nudges/next-nudge-time.ts";
import { type Program, startProgram } from "../program.ts";
import { foundRig, hemisphereOf } from "../rig/rig.ts";
import { readSeasons } from "./seasons.ts";

/** How long before the next nudge the demo's clock is set, so that a person is looking when it comes. */
const BEFORE_NUDGE = { seconds: 25 };
const LOOK_EVERY_MS = 1000;

export type Demo = { readonly url: string; readonly stop: () => Promise<void> };

type Around = { readonly say: (sentence: string) => void; readonly onFatal: (error: unknown) => void };

/** Waits until the program has taken that many updates and answered all of them. */
const settled = async ({ store }: Program, updates: number): Promise<void> => {
  while (
    store.inbox.newest("page") < updates ||
    store.inbox.next() !== undefined ||
    store.outbox.next("page") !== undefined
  )
    await wait(5);
};

/** Sends the nudges that fell due up to a moment, each at its own time. */
const nudgesUntil = async (
  program: Program,
  clock: MovedClock,
  until: Temporal.Instant,
  told: number,
): Promise<void> => {
  for (;;) {
    const at = nextNudgeTime(program.store, clock.now());
    if (at === undefined || Temporal.Instant.compare(at, until) >= 0) return;
    clock.moveTo(at);
    if (!program.nudge()) clock.moveTo(at.add({ hours: 24 }));
    await settled(program, told);
  }
};

/** Tells the bot Magpie's seasons through the chat, by a moved clock, in a folder that goes away at the end. */
export const startDemo = async (config: Config, around: Around): Promise<Demo> => {
  const { head, turns } = readSeasons();
  const home = await mkdtemp(join(tmpdir(), "holdfast-demo-"));
  const clock = new MovedClock(new Temporal.Duration());
  const first = turns[0];
  if (first !== undefined) clock.moveTo(first.at);
  const program = await startProgram(
    { ...config, home, messenger: null },
    { ...around, clock, scheduler: "by-hand", sampleModel: true },
  );
  foundRig(program.store, {
    zone: head.zone,
    hemisphere: head.hemisphere ?? hemisphereOf(head.zone),
    name: head.name ?? "Magpie",
  });

  const { people } = program.chat;
  const { person, secret } = program.chat.join("Ines");
  let told = 0;
  const tell = async (text: string): Promise<void> => {
    people.say(person, { key: randomUUID(), text });
    told++;
    await settled(program, told);
  };
  await tell(pairingCode(program.store));
  for (const [index, turn] of turns.entries()) {
    if (!("text" in turn)) continue;
    await nudgesUntil(program, clock, turn.at, told);
    clock.moveTo(turn.at);
    await tell(turn.text);
    if ((index + 1) % 10 === 0) around.say(`Telling Magpie's seasons: ${index + 1} of ${turns.length}.`);
  }
  const next = nextNudgeTime(program.store, clock.now());
  if (next !== undefined) clock.moveTo(next.subtract(BEFORE_NUDGE));
  const timer = setInterval(() => program.nudge(), LOOK_EVERY_MS);
  return {
    url: `${program.url}#as=${secret}`,
    stop: async () => {
      clearInterval(timer);
      await program.stop();
      await rm(home, { recursive: true, force: true });
    },
  };
};
