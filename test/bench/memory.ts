import { statSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { Temporal } from "temporal-polyfill";
import { ACTIONS, COMPONENTS, componentName } from "../../shared/vocabulary.ts";
import { DATABASE_FILE, openDatabase } from "../../store/open.ts";
import { NOTHING_SHOWN } from "../../store/outbox.ts";
import { Store } from "../../store/store.ts";
import { createDesk } from "../help/desk.ts";
import { CHAT, draft, NOW, pairedStore, temporaryFolder } from "../help/store.ts";
import { quantile } from "./quantile.ts";

const RECORDS_A_NOTE = 3;
const YEARS = 25;
const SIZES = [1_000, 10_000, 100_000];

const at = <T>(list: readonly T[], index: number): T => {
  const item = list[index % list.length];
  if (item === undefined) throw new Error("The list is empty.");
  return item;
};

/** A long-lived log: notes spread over the years, each with three records and its reply. */
const fill = (store: Store, notes: number): void => {
  const first = Temporal.PlainDate.from("2001-05-14");
  const daysApart = (YEARS * 365) / notes;
  store.transact(() => {
    const stamp = { turnId: 1, at: NOW.toString(), personId: 1 };
    store.turns.begin({ inboxId: null, ...CHAT, personId: 1, at: stamp.at });
    const keeper = store.keeper(stamp, "north");
    for (let note = 0; note < notes; note++) {
      const day = first.add({ days: Math.floor(note * daysApart) }).toString();
      const saidAt = `${day}T12:00:00-06:00`;
      const parts = [0, 1, 2].map((step) => at(COMPONENTS, note * 7 + step * 29));
      const text = `worked on the ${parts.map(componentName).join(", the ")} with batch ${note}`;
      const noteId = store.notes.add({
        inboxId: null,
        ...CHAT,
        messageId: note,
        personId: 1,
        saidAt,
        text,
        media: null,
      });
      store.notes.told(noteId);
      const reply = store.outbox.put({
        ...CHAT,
        method: "sendMessage",
        payload: { text },
        shows: { ...NOTHING_SHOWN, of: "note", noteId },
        turnId: null,
        at: saidAt,
      });
      store.outbox.sent(reply, note);
      for (const [step, component] of parts.entries()) {
        const action = at(ACTIONS, note + step * 5);
        const outcome = note % 4 === 0 ? "failed" : "holding";
        keeper.addRecord(
          noteId,
          saidAt,
          draft({ component, action, date: day, outcome, cost: (note % 90) + 5 }),
          "new",
        );
      }
    }
  });
};

const QUESTIONS = [
  "what did I last do to the gray tank?",
  "when did we last reseal the roof?",
  "how many times has the dump valve failed?",
  "is the skylight still holding?",
  "what's open?",
  "what have I spent this year?",
  "what did the roof cost me since 2020?",
  "did I ever grease the wheel bearings?",
  "what did I do in the summer of 2024?",
  "what did I say about batch 500?",
  "which way lasted longest on the water pump?",
  "what do I need to buy?",
];

const SAVES = COMPONENTS.slice(0, 40).map(
  (component) => `replaced the ${componentName(component)} today, 12 dollars`,
);

/** What is said before answers and saves are measured, as in a process that has run for a while. */
const ROUNDS = 8;
const WARMING = COMPONENTS.slice(40, 60).map(
  (component) => `greased the ${componentName(component)} yesterday`,
);

const timed = (say: (text: string) => unknown, texts: readonly string[]): number[] =>
  texts
    .map((text) => {
      const start = performance.now();
      say(text);
      return performance.now() - start;
    })
    .sort((a, b) => a - b);

const benchSize = (notes: number) => {
  const file = join(temporaryFolder(), DATABASE_FILE);
  const filled = pairedStore(file);
  fill(filled, notes);
  filled.db.pragma("wal_checkpoint(TRUNCATE)");
  filled.close();
  const bytes = statSync(file).size;
  const start = performance.now();
  const store = new Store(openDatabase(file, { check: true }));
  const startMs = performance.now() - start;
  const desk = createDesk(store);
  desk.say("hello");
  const first = timed(desk.say, QUESTIONS);
  for (let round = 0; round < ROUNDS; round++) timed(desk.say, [...QUESTIONS, ...WARMING]);
  const answers = timed(desk.say, [...QUESTIONS, ...QUESTIONS, ...QUESTIONS]);
  const saves = timed(desk.say, SAVES);
  store.close();
  return {
    notes,
    records: notes * RECORDS_A_NOTE,
    "start ms": startMs.toFixed(0),
    "first answers median ms": quantile(first, 0.5).toFixed(1),
    "answer median ms": quantile(answers, 0.5).toFixed(1),
    "answer p95 ms": quantile(answers, 0.95).toFixed(1),
    "linked save median ms": quantile(saves, 0.5).toFixed(1),
    "linked save p95 ms": quantile(saves, 0.95).toFixed(1),
    "bytes a note": Math.round(bytes / notes),
  };
};

/** Asking and saving on logs of growing size, the whole way from text to reply in the outbox. */
export const benchMemory = (): void => {
  console.log("Asking and linked saving, from a text to its reply:");
  console.table(SIZES.map(benchSize));
};
