import { listTicksIn } from "../../nlp/understand/list-ticks.ts";
import type { KeptRecord, RecordId } from "../../shared/history.ts";
import { type LeavingItem, leavingList, outlooksOf } from "../../shared/outlook/index.ts";
import type { Trip } from "../../store/trips.ts";
import { putOffs } from "../nudges/put-offs.ts";
import { leavingReply } from "../replies/leaving.ts";
import { announcedTrip } from "../rig/announced-trip.ts";
import { careAhead } from "../rig/care-choices.ts";
import { outlookRig } from "../rig/outlook-rig.ts";
import { careUndone, markCareDone } from "./care.ts";
import { pendingIn } from "./pending.ts";
import { settle } from "./tick.ts";
import type { ToldNote } from "./told.ts";
import type { Reply, Turn } from "./turn.ts";

const tickedRecords = ({ store }: Turn, ticked: readonly string[]): readonly KeptRecord[] =>
  ticked.flatMap((key) => {
    const id = /^record:(\d+)$/.exec(key)?.[1];
    return (id === undefined ? undefined : store.history.record(Number(id))) ?? [];
  });

/** The departure list as of now, worst first. */
const itemsFor = (turn: Turn, ticked: readonly string[]): readonly LeavingItem[] => {
  const trip = announcedTrip(turn.store);
  if (trip === null) return [];
  const rig = outlookRig(turn);
  const repairs = turn.store.history.records({ kinds: ["repair"] });
  const others = [...turn.store.history.records({ open: true }), ...tickedRecords(turn, ticked)];
  const records = new Map<RecordId, KeptRecord>([...repairs, ...others].map((record) => [record.id, record]));
  return leavingList({
    records: [...records.values()],
    outlooks: outlooksOf({ ...rig, records: repairs, notBefore: putOffs(turn.store) }),
    care: careAhead(turn),
    trip,
    settings: rig.settings,
    ticked: new Set(ticked),
  });
};

export const listReply = (turn: Turn): Reply => {
  const trip = turn.store.trips.current();
  return trip === undefined
    ? { text: "No trip is announced. Say something like “we leave on the 12th for two weeks”." }
    : leavingReply(turn, trip, itemsFor(turn, trip.ticked));
};

/** What is open is settled by a tick, and care that was due is done; a look that was had says nothing of what was seen. */
const seeTo = (turn: Turn, { what, record, row }: LeavingItem, done: boolean): void => {
  if (row !== null) return done ? markCareDone(turn, row) : careUndone(turn, row);
  if (record === null || what === "look" || what === "may-fail") return;
  if (done) settle(turn, [record]);
  else turn.keeper.settle(record, false);
};

/** Ticks lines of the departure list, or unticks them. */
const tick = (turn: Turn, trip: Trip, keys: readonly string[], done: boolean): void => {
  const items = itemsFor(turn, trip.ticked).filter(({ key }) => keys.includes(key));
  for (const item of items) if (trip.ticked.includes(item.key) !== done) seeTo(turn, item, done);
  const others = trip.ticked.filter((key) => !keys.includes(key));
  turn.keeper.setTrip(trip.id, "ticked", JSON.stringify(done ? [...others, ...keys] : others));
};

/** A tapped box: ticks its line, or unticks it. */
export const tickLine = (turn: Turn, line: string, rewrite: (reply: Reply) => void): void => {
  const trip = turn.store.trips.current();
  if (trip === undefined) return rewrite({ text: "That trip is over." });
  tick(turn, trip, [line], !trip.ticked.includes(line));
  rewrite(listReply(turn));
};

/** Ticks said in words, "tick 2" or "1 and 3 are done", when a departure list was shown. */
export const listTicked = (turn: Turn, { text }: ToldNote): boolean => {
  const trip = turn.store.trips.current();
  const said = trip === undefined ? undefined : listTicksIn(text);
  if (trip === undefined || said === undefined) return false;
  const { lines, newest } = turn.store.outbox.lastList(turn.chat.channel, turn.chat.chatId);
  if (lines.length === 0 || pendingIn(turn) !== null || (said.plain && !newest)) return false;
  const keys = said.lines === "all" ? lines : said.lines.flatMap((line) => lines[line - 1] ?? []);
  if (keys.length === 0) {
    turn.say({ text: `The list has ${lines.length} lines. Which ones are done?` });
    return true;
  }
  tick(turn, trip, keys, said.done);
  turn.say(listReply(turn));
  return true;
};
