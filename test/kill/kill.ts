import { randomUUID } from "node:crypto";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { COMPONENTS, componentName } from "../../shared/vocabulary.ts";
import { DATABASE_FILE, openDatabase } from "../../store/open.ts";
import { Store } from "../../store/store.ts";
import { PageClient } from "../help/page-client.ts";
import { temporaryFolder } from "../help/store.ts";
import { killed, randomFrom, startProgram } from "./running.ts";

export type KillTally = {
  readonly kills: number;
  readonly notesSent: number;
  readonly notesKept: number;
  /** Records and entries of use. */
  readonly records: number;
  readonly replies: number;
  /** Notes without exactly one reply shown. */
  readonly wrongReplies: number;
};

const PARTS = COMPONENTS.slice(0, 60);

/** Each of these parts is replaced once; after that the rig is towed, so that no note can be taken for another. */
const note = (number: number): string => {
  const component = PARTS[number - 1];
  return component === undefined
    ? `towed ${number} miles today`
    : `replaced the ${componentName(component)} today, ${number} dollars`;
};

/** The number of the note that a reply is about. */
const noteOf = (reply: string): number =>
  Number(/\$(\d+)/.exec(reply)?.[1] ?? /Logged: (\d+) miles/.exec(reply)?.[1]);

/** Sends one note until the program has taken it, whatever happens in between. */
const sendNote = async (client: PageClient, number: number, key: string): Promise<boolean> =>
  client.say(note(number), key).then(
    () => true,
    () => false,
  );

/** Kills the program at random instants while notes come in, and counts what is there in the end. */
export const killAtRandom = async (kills: number, seed: number): Promise<KillTally> => {
  const random = randomFrom(seed);
  const home = temporaryFolder();
  let running = await startProgram(home);
  const { code } = running;
  let client = new PageClient(running.url);
  await client.enter();
  const cookie = client.cookieHeader();
  await client.say(code ?? "");
  const notes: { number: number; key: string; sent: boolean }[] = [];

  for (let kill = 0; kill < kills; kill++) {
    const toSend = [0, 1, 2].map((step) => ({ number: kill * 3 + step + 1, key: randomUUID(), sent: false }));
    notes.push(...toSend);
    const sending = (async () => {
      for (const each of toSend) {
        each.sent = await sendNote(client, each.number, each.key);
        await wait(random() * 15);
      }
    })();
    await wait(random() * 120);
    await killed(running.child);
    await sending;
    running = await startProgram(home);
    client = new PageClient(running.url);
    client.useCookie(cookie);
    for (const each of toSend.filter(({ sent }) => !sent))
      each.sent = await sendNote(client, each.number, each.key);
  }
  await settled(home);
  const tally = await count(client, home, notes.length, kills);
  await killed(running.child);
  return tally;
};

const settled = async (home: string): Promise<void> => {
  const store = new Store(openDatabase(join(home, DATABASE_FILE)));
  for (let calm = 0; calm < 10; ) {
    await wait(100);
    calm = store.inbox.next() === undefined && store.outbox.next("page") === undefined ? calm + 1 : 0;
  }
  store.close();
};

const count = async (
  client: PageClient,
  home: string,
  notesSent: number,
  kills: number,
): Promise<KillTally> => {
  const messages = await client.messages();
  const replies = messages
    .filter(({ from }) => from?.is_bot === true)
    .map(({ text }) => noteOf(text ?? ""))
    .filter((number) => !Number.isNaN(number));
  const shown = new Map<number, number>();
  for (const number of replies) shown.set(number, (shown.get(number) ?? 0) + 1);
  const wrongReplies = Array.from({ length: notesSent }, (_, index) => shown.get(index + 1) ?? 0).filter(
    (times) => times !== 1,
  ).length;
  const store = new Store(openDatabase(join(home, DATABASE_FILE)));
  const number = (sql: string) => Number(store.db.prepare(sql).pluck().get());
  const tally = {
    kills,
    notesSent,
    notesKept: number("SELECT count(*) FROM notes WHERE told = 1"),
    records: number(
      "SELECT (SELECT count(*) FROM records WHERE removed = 0) + (SELECT count(*) FROM use_log WHERE removed = 0)",
    ),
    replies: replies.length,
    wrongReplies,
  };
  store.close();
  return tally;
};
