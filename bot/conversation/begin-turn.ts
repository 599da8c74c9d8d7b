import type { Temporal } from "temporal-polyfill";
import type { Chat } from "../../store/people.ts";
import type { Store } from "../../store/store.ts";
import { localIso, rigOf } from "../rig/rig.ts";
import { Turn } from "./turn.ts";

/** Begins a turn of a paired person; undefined for a stranger. */
export const beginTurn = (
  store: Store,
  inboxId: number | null,
  chat: Chat,
  now: Temporal.Instant,
): Turn | undefined => {
  const person = store.people.of(chat);
  if (person === undefined) return undefined;
  const rig = rigOf(store);
  store.boundDates(rig.hemisphere);
  const at = localIso(now, rig.zone);
  const turnId = store.turns.begin({ inboxId, ...chat, personId: person.id, at });
  const keeper = store.keeper({ turnId, at, personId: person.id }, rig.hemisphere);
  return new Turn({ store, keeper, turnId, chat, person, rig, now });
};
