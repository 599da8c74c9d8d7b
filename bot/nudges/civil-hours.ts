import { Temporal } from "temporal-polyfill";
import type { Rig } from "../rig/rig.ts";

/** People on the road are up by then. */
const MORNING_HOUR = 9;

const nudgeHour = ({ quietFrom, quietTo }: Rig): number => {
  const morning = Math.max(MORNING_HOUR, quietTo);
  return quietFrom > quietTo && morning >= quietFrom ? quietTo : morning;
};

const isQuiet = (hour: number, { quietFrom, quietTo }: Rig): boolean => {
  if (quietFrom === quietTo) return false;
  return quietFrom < quietTo ? hour >= quietFrom && hour < quietTo : hour >= quietFrom || hour < quietTo;
};

/** Whether the phone may ring now. */
export const isCivil = (now: Temporal.Instant, rig: Rig): boolean => {
  const { hour } = now.toZonedDateTimeISO(rig.zone);
  return hour >= nudgeHour(rig) && !isQuiet(hour, rig);
};

/** The moment of a day at which nudges go out; a clock change never skips it. */
export const nudgeTime = (day: Temporal.PlainDate, rig: Rig): Temporal.Instant =>
  day.toZonedDateTime({ timeZone: rig.zone, plainTime: new Temporal.PlainTime(nudgeHour(rig)) }).toInstant();
