import { Temporal } from "temporal-polyfill";
import { daySpan } from "../../shared/edtf.ts";
import type { Intent } from "../../shared/memory/intent.ts";
import { EMPTY_TOPIC, type Query } from "../../shared/memory/query.ts";
import type { Edtf } from "../../shared/record.ts";
import { planLooks } from "../nudges/plan-looks.ts";
import { homeReply } from "../replies/leaving.ts";
import { ask } from "./ask.ts";
import { listReply } from "./leaving-list.ts";
import { waitFor } from "./pending.ts";
import type { Turn } from "./turn.ts";

type Leave = Extract<Intent, { is: "leave" }>;

const MILES_A_KM = 0.621371;

const dayIn = (turn: Turn, date: Edtf | null, end: "first" | "last"): Temporal.PlainDate | null => {
  const span = date === null ? undefined : daySpan(date, turn.rig.hemisphere);
  if (span === undefined) return null;
  return end === "first" ? span.from : span.to.subtract({ days: 1 });
};

/** "For four months" names a month to be back in: about the same day of it. */
const dayBack = (turn: Turn, date: Edtf | null, from: Temporal.PlainDate): Temporal.PlainDate | null => {
  const last = dayIn(turn, date, "last");
  if (last === null || date === null || !/^\d{4}-\d{2}~?$/.test(date)) return last;
  const sameDay = last.with({ day: from.day }, { overflow: "constrain" });
  return Temporal.PlainDate.compare(sameDay, from) < 0 ? last : sameDay;
};

const milesIn = ({ use }: Leave): number | null => {
  const miles = use.find(({ unit }) => unit === "miles");
  const km = use.find(({ unit }) => unit === "km");
  return miles?.count ?? (km === undefined ? null : Math.round(km.count * MILES_A_KM));
};

const LENGTHS = { days: 1, nights: 1, weeks: 7, months: 30, years: 365 } as const;

const backAfter = (from: Temporal.PlainDate, { use }: Leave): Temporal.PlainDate | null => {
  for (const { count, unit } of use) {
    if (unit in LENGTHS) return from.add({ days: Math.round(count * LENGTHS[unit as keyof typeof LENGTHS]) });
  }
  return null;
};

/** Notes a trip and shows what to see to before it. */
export const leave = (turn: Turn, intent: Leave): void => {
  const from = dayIn(turn, intent.from, "first") ?? turn.today;
  const to = dayBack(turn, intent.to, from) ?? backAfter(from, intent);
  if (to !== null && Temporal.PlainDate.compare(to, from) < 0) {
    turn.say({ text: "That has you back before you leave. When do you leave, and when are you back?" });
    return;
  }
  const earlier = turn.store.trips.current();
  if (earlier !== undefined) turn.keeper.setTrip(earlier.id, "state", "over");
  turn.keeper.addTrip({ leaves: from.toString(), returns: to?.toString() ?? null, miles: milesIn(intent) });
  planLooks(turn, "all");
  turn.say(listReply(turn));
};

const ALL_OPEN: Query = { ask: "open", topic: EMPTY_TOPIC, period: null };
const ANNOUNCE =
  "No trip is announced. Say something like “we leave on the 12th for two weeks”, and I go through the whole rig for it.";

/** What to see to before the trip; without one, all that is open. */
export const readyToLeave = (turn: Turn): void => {
  if (turn.store.trips.current() === undefined) ask(turn, ALL_OPEN, ANNOUNCE);
  else turn.say(listReply(turn));
};

const ASKED_AT_HOME = 4;

/** Closes the trip and asks what held. */
export const comeHome = (turn: Turn): void => {
  const trip = turn.store.trips.current();
  if (trip === undefined) {
    turn.say({
      text: "Welcome home. No trip was announced, so there is nothing to close. How did everything hold?",
    });
    return;
  }
  turn.keeper.setTrip(trip.id, "state", "over");
  const due = turn.store.looks.until(turn.today.add({ days: 60 }).toString());
  planLooks(turn, "all");
  const asked = due.slice(0, ASKED_AT_HOME).map(({ recordId }) => recordId);
  turn.say(homeReply(turn, asked));
  if (asked.length > 0) waitFor(turn, { is: "nudge", records: asked });
};
