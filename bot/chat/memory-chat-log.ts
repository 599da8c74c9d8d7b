import type { ChatLog, FileRow, MessageRow, PersonRow, UpdateRow } from "./chat-log.ts";

const FIRST_CHAT = 1001;

type Kept = {
  people: Map<string, PersonRow>;
  messages: Map<number, MessageRow>;
  onces: Map<string, number>;
  updates: UpdateRow[];
  taps: Map<string, number>;
  files: Map<string, FileRow>;
  commands: string | undefined;
  counters: { change: number; message: number; update: number };
};

const empty = (): Kept => ({
  people: new Map(),
  messages: new Map(),
  onces: new Map(),
  updates: [],
  taps: new Map(),
  files: new Map(),
  commands: undefined,
  counters: { change: 0, message: 0, update: 0 },
});

/** Rows are never changed in place, so copies of the tables are enough. */
const copied = (kept: Kept): Kept => ({
  people: new Map(kept.people),
  messages: new Map(kept.messages),
  onces: new Map(kept.onces),
  updates: [...kept.updates],
  taps: new Map(kept.taps),
  files: new Map(kept.files),
  commands: kept.commands,
  counters: { ...kept.counters },
});

const people = (kept: () => Kept) => ({
  addPerson: (secretHash: string, name: string) => {
    if (kept().people.has(secretHash)) throw new Error("this secret is already somebody's");
    const row = { chat: FIRST_CHAT + kept().people.size, name };
    kept().people.set(secretHash, row);
    return row;
  },
  personBySecret: (secretHash: string) => kept().people.get(secretHash),
  person: (chat: number) => [...kept().people.values()].find((row) => row.chat === chat),
  renamePerson: (chat: number, name: string) => {
    const known = [...kept().people].find(([, row]) => row.chat === chat);
    if (known) kept().people.set(known[0], { chat, name });
  },
});

const messages = (kept: () => Kept) => {
  const put = (id: number, chat: number, body: string | null) => {
    kept().counters.change += 1;
    const row = { id, chat, body, change: kept().counters.change };
    kept().messages.set(id, row);
    return row;
  };
  const all = () => [...kept().messages.values()];
  return {
    addMessage: (chat: number, body: string, once: string | null) => {
      if (once !== null && kept().onces.has(once)) throw new Error("this once is already used");
      if (![...kept().people.values()].some((row) => row.chat === chat)) throw new Error("no such chat");
      kept().counters.message += 1;
      if (once !== null) kept().onces.set(once, kept().counters.message);
      return put(kept().counters.message, chat, body);
    },
    message: (id: number) => kept().messages.get(id),
    messageByOnce: (once: string) => kept().messages.get(kept().onces.get(once) ?? 0),
    setMessage: (id: number, body: string | null) => {
      const row = kept().messages.get(id);
      if (!row) throw new Error("no such message");
      return put(id, row.chat, body);
    },
    messagesBefore: (chat: number, before: number, limit: number) =>
      all()
        .filter((row) => row.chat === chat && row.id < before && row.body !== null)
        .sort((a, b) => a.id - b.id)
        .slice(-limit),
    changesAfter: (chat: number, change: number) =>
      all()
        .filter((row) => row.chat === chat && row.change > change)
        .sort((a, b) => a.change - b.change),
    lastChange: () => kept().counters.change,
  };
};

const updates = (kept: () => Kept) => ({
  addUpdate: (kind: string, body: string) => {
    kept().counters.update += 1;
    const row = { id: kept().counters.update, kind, body };
    kept().updates.push(row);
    return row;
  },
  updatesFrom: (id: number, limit: number) =>
    kept()
      .updates.filter((row) => row.id >= id)
      .slice(0, limit),
  lastUpdates: (count: number) => kept().updates.slice(-count),
  confirmUpdates: (id: number) => {
    kept().updates = kept().updates.filter((row) => row.id >= id);
  },
});

const rest = (kept: () => Kept) => ({
  addTap: (id: string, chat: number) => {
    if (kept().taps.has(id)) return false;
    kept().taps.set(id, chat);
    return true;
  },
  tapChat: (id: string) => kept().taps.get(id),
  addFile: (file: FileRow) => void kept().files.set(file.id, file),
  file: (id: string) => kept().files.get(id),
  setCommands: (json: string) => {
    kept().commands = json;
  },
  commands: () => kept().commands,
});

/** A chat log that lasts as long as the process. */
export const memoryChatLog = (): ChatLog => {
  let state = empty();
  const kept = () => state;
  const atomically = <T>(work: () => T): T => {
    const before = copied(state);
    try {
      return work();
    } catch (error) {
      state = before;
      throw error;
    }
  };
  return { atomically, ...people(kept), ...messages(kept), ...updates(kept), ...rest(kept) };
};
