import { Intl as Formats, Temporal } from "temporal-polyfill";
import type { KeptRecord } from "../../shared/history.ts";
import type { Turn } from "../conversation/turn.ts";

const WEEKDAY = new Formats.DateTimeFormat("en-GB", { weekday: "short" });
const MONTH = new Formats.DateTimeFormat("en-GB", { month: "short" });

/** "Sat 5 Dec", with the year when it is not this one. */
export const sayDay = (day: Temporal.PlainDate, today: Temporal.PlainDate): string => {
  const away = today.until(day, { largestUnit: "days" }).days;
  if (away === 0) return "today";
  if (away === 1) return "tomorrow";
  const weekday = WEEKDAY.format(day);
  const month = MONTH.format(day);
  if (Math.abs(away) < 150) return `${weekday} ${day.day} ${month}`;
  return `${day.day} ${month} ${day.year}`;
};

/** " Next look: Sat 5 Dec." or nothing. */
export const lookAhead = (turn: Turn, record: KeptRecord): string => {
  const look = turn.store.looks.of(record.id);
  if (look === undefined || record.closedBy !== null || record.removed) return "";
  const due = Temporal.PlainDate.from(look.putOffTo ?? look.due);
  const day = Temporal.PlainDate.compare(due, turn.today) < 0 ? turn.today : due;
  return ` Next look: ${sayDay(day, turn.today)}.`;
};
