import type { KeptRecord, RecordId } from "../../shared/history.ts";
import type { Intent } from "../../shared/memory/intent.ts";
import { stepsOf } from "../../shared/memory/pool.ts";
import { thingName } from "../replies/record-line.ts";
import { listed } from "../replies/words.ts";
import type { Turn } from "./turn.ts";

type Tick = Extract<Intent, { is: "tick" }>;

const meant = (turn: Turn, intent: Tick): readonly KeptRecord[] => {
  if (intent.records.length > 0) return intent.records.flatMap((id) => turn.store.history.record(id) ?? []);
  if (intent.topic === null) return [];
  return turn.store.history.records({ components: stepsOf(intent.topic)[0] ?? [], open: true });
};

/** Ticks off what was open. Returns what is ticked now. */
export const settle = (turn: Turn, ids: readonly RecordId[]): readonly KeptRecord[] => {
  const open = ids
    .flatMap((id) => turn.store.history.record(id) ?? [])
    .filter(({ removed, settled, closedBy }) => !removed && !settled && closedBy === null);
  for (const { id } of open) turn.keeper.settle(id, true);
  return open;
};

/** False, with nothing said, where the words may be about something else than the list. */
export const tick = (turn: Turn, intent: Tick): boolean => {
  const ticked = settle(
    turn,
    meant(turn, intent).map(({ id }) => id),
  );
  if (ticked.length === 0 && intent.how === "dropped") return false;
  if (ticked.length === 0) {
    turn.say({ text: "I don't find that among the open things. Ask “what's open?” to see them." });
    return true;
  }
  const names = listed(ticked.map(({ fields }) => thingName(fields)));
  turn.say({
    text: `${intent.how === "dropped" ? "Dropped" : "Ticked off"}: ${names}.`,
    buttons: [[{ label: "Undo", tap: { tap: "undo", turn: turn.turnId } }]],
    shows: { of: "note", records: ticked.map(({ id }) => id) },
  });
  return true;
};
