import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Temporal } from "temporal-polyfill";
import { foundRig } from "../../bot/rig/rig.ts";
import type { Draft } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import { openDatabase } from "../../store/open.ts";
import { Store } from "../../store/store.ts";

export const NOW = Temporal.Instant.from("2026-05-14T18:30:00-06:00");
export const CHAT = { channel: "page", chatId: 7 } as const;

export const temporaryFolder = (): string => mkdtempSync(join(tmpdir(), "holdfast-"));

/** A store with one paired person, in memory unless a file is given. */
export const pairedStore = (file = ":memory:"): Store => {
  const store = new Store(openDatabase(file));
  foundRig(store, { name: "Magpie", zone: "America/Denver", hemisphere: "north" });
  if (store.people.of(CHAT) === undefined) store.people.pair(CHAT, "Ines", NOW.toString());
  return store;
};

const FIELDS: RecordFields = {
  kind: "repair",
  component: "gray-tank",
  where: "rear corner",
  action: "patch",
  materials: ["epoxy", "glass cloth"],
  date: "2026-05-14",
  outcome: "untested",
  exposure: [],
  cost: 24,
  fault: "hairline crack",
  due: null,
};

export const draft = (fields: Partial<RecordFields> = {}): Draft => ({
  fields: { ...FIELDS, ...fields },
  evidence: {},
  span: { start: 0, end: 10 },
  brands: [],
  doneBy: null,
});

/** Begins a turn and hands out its keeper, with a note to hang records on. */
export const keeping = (store: Store, text = "patched the gray tank") => {
  const at = NOW.toString();
  const turnId = store.turns.begin({ inboxId: null, ...CHAT, personId: 1, at });
  const keeper = store.keeper({ turnId, at, personId: 1 }, "north");
  const noteId = store.notes.add({
    inboxId: null,
    ...CHAT,
    messageId: 1,
    personId: 1,
    saidAt: at,
    text,
    media: null,
  });
  store.notes.told(noteId);
  return { keeper, turnId, noteId, saidAt: at };
};
