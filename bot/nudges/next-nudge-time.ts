import { Temporal } from "temporal-polyfill";
import { z } from "zod";
import type { Store } from "../../store/store.ts";
import { careToAsk } from "../rig/care-choices.ts";
import { dayOf, type Rig, rigOf } from "../rig/rig.ts";
import { isCivil, nudgeTime } from "./civil-hours.ts";

export const LAST_DAY_KEY = "nudges.last-day";

export const lastNudgeDay = (store: Store): string | undefined =>
  z.string().optional().parse(store.settings.get(LAST_DAY_KEY));

const earlier = <T extends Temporal.PlainDate>(days: readonly T[]): T | undefined =>
  [...days].sort((a, b) => Temporal.PlainDate.compare(a, b))[0];

const soonestDay = (store: Store, rig: Rig, today: Temporal.PlainDate): Temporal.PlainDate | undefined => {
  const look = store.looks.soonest();
  const care = careToAsk({ store, rig, today });
  return earlier([
    ...(look === undefined ? [] : [Temporal.PlainDate.from(look)]),
    ...care.map(({ day }) => day),
  ]);
};

/** The first civil moment from `now` on, or from a later moment if that is given. */
const civilFrom = (moment: Temporal.Instant, rig: Rig): Temporal.Instant => {
  if (isCivil(moment, rig)) return moment;
  const morning = nudgeTime(dayOf(moment, rig), rig);
  return Temporal.Instant.compare(moment, morning) < 0
    ? morning
    : nudgeTime(dayOf(moment, rig).add({ days: 1 }), rig);
};

const later = (a: Temporal.Instant, b: Temporal.Instant): Temporal.Instant =>
  Temporal.Instant.compare(a, b) > 0 ? a : b;

const lookTime = (store: Store, rig: Rig, now: Temporal.Instant): Temporal.Instant | undefined => {
  const soonest = soonestDay(store, rig, dayOf(now, rig));
  if (soonest === undefined) return undefined;
  const last = lastNudgeDay(store);
  const free = last === undefined ? soonest : Temporal.PlainDate.from(last).add({ days: 1 });
  const day = Temporal.PlainDate.compare(free, soonest) > 0 ? free : soonest;
  return civilFrom(later(nudgeTime(day, rig), now), rig);
};

/** When something may next be said unasked, if anything is ahead. */
export const nextNudgeTime = (store: Store, now: Temporal.Instant): Temporal.Instant | undefined => {
  const rig = rigOf(store);
  const ready = store.readiness.soonest();
  const times = [
    lookTime(store, rig, now),
    ready === undefined ? undefined : civilFrom(later(Temporal.Instant.from(ready), now), rig),
  ].filter((time) => time !== undefined);
  return times.sort((a, b) => Temporal.Instant.compare(a, b))[0];
};
