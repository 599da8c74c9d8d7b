import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import type { KeptRecord, RecordId } from "../../shared/history.ts";
import { type Consequence, consequenceOf } from "../../shared/vocabulary.ts";
import type { Chat } from "../../store/people.ts";
import type { Store } from "../../store/store.ts";
import { waitFor } from "../conversation/pending.ts";
import { Turn } from "../conversation/turn.ts";
import { nudgeText } from "../replies/nudge.ts";
import { dayOf, type Rig, rigOf } from "../rig/rig.ts";
import { isCivil, nudgeTime } from "./civil-hours.ts";
import { planLooks } from "./plan-looks.ts";

/** No more than this many looks are asked about at once, and no more than one such message a day. */
const AT_ONCE = 4;
const LAST_DAY_KEY = "nudges.last-day";
const NOBODY = { id: 0, name: "" };

const lastNudgeDay = (store: Store): string | undefined =>
  z.string().optional().parse(store.settings.get(LAST_DAY_KEY));

const WORST_FIRST: Record<Consequence, number> = { safety: 0, water: 1, use: 2, comfort: 3 };

const dueRecords = (store: Store, today: string): readonly KeptRecord[] =>
  store.looks
    .due(today)
    .flatMap(({ recordId }) => store.history.record(recordId) ?? [])
    .sort(
      (a, b) =>
        WORST_FIRST[consequenceOf(a.fields.component)] - WORST_FIRST[consequenceOf(b.fields.component)],
    );

const unaskedTurn = (store: Store, rig: Rig, chat: Chat, now: Temporal.Instant): Turn => {
  const turnId = store.turns.begin({ inboxId: null, ...chat, personId: null, at: now.toString() });
  const keeper = store.keeper({ turnId, at: now.toString(), personId: null }, rig.hemisphere);
  return new Turn({ store, keeper, turnId, chat, person: NOBODY, rig, now });
};

const tellChat = (turn: Turn, records: readonly RecordId[]): void => {
  turn.say({ ...nudgeText(turn, records), shows: { of: "nudge", records: [...records] } });
  waitFor(turn, { is: "nudge", records: [...records] });
};

/** Asks about what is due, once, when the hour is civil. Returns the records that were asked about. */
export const sendNudges = (store: Store, now: Temporal.Instant): readonly RecordId[] =>
  store.transact(() => {
    const rig = rigOf(store);
    const today = dayOf(now, rig).toString();
    const chats = store.people.chats();
    const [first] = chats;
    if (
      first === undefined ||
      !isCivil(now, rig) ||
      lastNudgeDay(store) === today ||
      store.looks.due(today).length === 0
    )
      return [];
    planLooks(unaskedTurn(store, rig, first, now), "all");
    const records = dueRecords(store, today)
      .slice(0, AT_ONCE)
      .map(({ id }) => id);
    if (records.length === 0) return [];
    for (const chat of chats) tellChat(unaskedTurn(store, rig, chat, now), records);
    store.looks.nudged(records, now.toString());
    store.settings.put(LAST_DAY_KEY, today);
    return records;
  });

/** When nudges may next go out, if any look is ahead: the soonest due day, or the day after one that had its message. */
export const nextNudgeTime = (store: Store, now: Temporal.Instant): Temporal.Instant | undefined => {
  const soonest = store.looks.soonest();
  if (soonest === undefined) return undefined;
  const rig = rigOf(store);
  const last = lastNudgeDay(store);
  const days = [
    Temporal.PlainDate.from(soonest),
    ...(last === undefined ? [] : [Temporal.PlainDate.from(last).add({ days: 1 })]),
  ];
  const day = days.reduce((later, each) => (Temporal.PlainDate.compare(each, later) > 0 ? each : later));
  const time = nudgeTime(day, rig);
  if (Temporal.Instant.compare(time, now) >= 0) return time;
  return isCivil(now, rig)
    ? now
    : nudgeTime(dayOf(now, rig).add({ days: isBeforeMorning(now, rig) ? 0 : 1 }), rig);
};

const isBeforeMorning = (now: Temporal.Instant, rig: Rig): boolean =>
  Temporal.Instant.compare(now, nudgeTime(dayOf(now, rig), rig)) < 0;
