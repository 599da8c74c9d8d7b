import { Temporal } from "temporal-polyfill";
import type { RecordId } from "../../shared/history.ts";
import { type Consequence, consequenceOf } from "../../shared/vocabulary.ts";
import { NOTHING_SHOWN } from "../../store/outbox.ts";
import type { Store } from "../../store/store.ts";
import { waitFor } from "../conversation/pending.ts";
import { Turn } from "../conversation/turn.ts";
import { type Nudged, nudgeText } from "../replies/nudge.ts";
import { careNudged, careToAsk } from "../rig/care-choices.ts";
import { dayOf, type Rig, rigOf } from "../rig/rig.ts";
import { isCivil } from "./civil-hours.ts";
import { LAST_DAY_KEY, lastNudgeDay } from "./next-nudge-time.ts";
import { planLooks } from "./plan-looks.ts";

/** No more than this many things are asked about at once, and no more than one such message a day. */
const AT_ONCE = 4;
const NOBODY = { id: 0, name: "" };
const NOTHING: Nudged = { records: [], care: [] };

const WORST_FIRST: Record<Consequence, number> = { safety: 0, water: 1, use: 2, comfort: 3 };

type Due = { readonly consequence: Consequence } & ({ readonly record: RecordId } | { readonly row: string });

const unaskedTurns = (store: Store, rig: Rig, now: Temporal.Instant): readonly Turn[] =>
  store.people.chats().map((chat) => {
    const turnId = store.turns.begin({ inboxId: null, ...chat, personId: null, at: now.toString() });
    const keeper = store.keeper({ turnId, at: now.toString(), personId: null }, rig.hemisphere);
    return new Turn({ store, keeper, turnId, chat, person: NOBODY, rig, now });
  });

const dueFixes = (turn: Turn): readonly Due[] =>
  turn.store.looks.due(turn.today.toString()).flatMap(({ recordId }) => {
    const record = turn.store.history.record(recordId);
    return record === undefined
      ? []
      : [{ record: recordId, consequence: consequenceOf(record.fields.component) }];
  });

const dueCare = (turn: Turn): readonly Due[] =>
  careToAsk(turn)
    .filter(({ day }) => Temporal.PlainDate.compare(day, turn.today) <= 0)
    .map(({ care: { row } }) => ({ row: row.id, consequence: row.consequence }));

const worst = (turn: Turn): Nudged => {
  const due = [...dueFixes(turn), ...dueCare(turn)]
    .sort((a, b) => WORST_FIRST[a.consequence] - WORST_FIRST[b.consequence])
    .slice(0, AT_ONCE);
  return {
    records: due.flatMap((each) => ("record" in each ? [each.record] : [])),
    care: due.flatMap((each) => ("row" in each ? [each.row] : [])),
  };
};

const tellChat = (turn: Turn, nudged: Nudged): void => {
  turn.say({
    ...nudgeText(turn, nudged),
    shows: { of: "nudge", records: [...nudged.records], care: [...nudged.care] },
  });
  if (nudged.records.length > 0) waitFor(turn, { is: "nudge", records: [...nudged.records] });
};

/** What was glued or sealed and may be used by now. */
const sayReady = (turns: readonly Turn[], store: Store, now: Temporal.Instant): readonly RecordId[] => {
  const ready = store.readiness.due(now.toString());
  for (const { recordId, words } of ready) {
    for (const turn of turns)
      turn.say({ text: words, shows: { ...NOTHING_SHOWN, of: "nudge", records: [recordId] } });
    store.readiness.told(recordId, now.toString());
  }
  return ready.map(({ recordId }) => recordId);
};

const askLooks = (turns: readonly Turn[], store: Store, today: string, now: Temporal.Instant): Nudged => {
  const [first] = turns;
  if (first === undefined || lastNudgeDay(store) === today) return NOTHING;
  planLooks(first, "all");
  const nudged = worst(first);
  if (nudged.records.length + nudged.care.length === 0) return NOTHING;
  store.looks.nudged(nudged.records, now.toString());
  careNudged(store, nudged.care, today);
  store.settings.put(LAST_DAY_KEY, today);
  for (const turn of turns) tellChat(turn, nudged);
  return nudged;
};

const somethingMayBeDue = (store: Store, rig: Rig, now: Temporal.Instant): boolean => {
  const today = dayOf(now, rig);
  if (store.readiness.due(now.toString()).length > 0) return true;
  if (lastNudgeDay(store) === today.toString()) return false;
  return (
    store.looks.due(today.toString()).length > 0 ||
    careToAsk({ store, rig, today }).some(({ day }) => Temporal.PlainDate.compare(day, today) <= 0)
  );
};

/** Asks about what is due, once, when the hour is civil. Returns the records that were spoken of. */
export const sendNudges = (
  store: Store,
  now: Temporal.Instant,
): { readonly sent: boolean; readonly records: readonly RecordId[] } =>
  store.transact(() => {
    const rig = rigOf(store);
    if (!isCivil(now, rig) || !somethingMayBeDue(store, rig, now)) return { sent: false, records: [] };
    const turns = unaskedTurns(store, rig, now);
    const ready = sayReady(turns, store, now);
    const asked = askLooks(turns, store, dayOf(now, rig).toString(), now);
    return {
      sent: turns.length > 0 && ready.length + asked.records.length + asked.care.length > 0,
      records: [...ready, ...asked.records],
    };
  });
