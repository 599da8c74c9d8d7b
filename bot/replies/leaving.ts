import { Temporal } from "temporal-polyfill";
import type { RecordId } from "../../shared/history.ts";
import type { LeavingItem } from "../../shared/outlook/index.ts";
import type { Trip } from "../../store/trips.ts";
import type { Button } from "../conversation/buttons.ts";
import type { Reply, Turn } from "../conversation/turn.ts";
import { sayDay } from "./look-words.ts";
import { lookList } from "./nudge.ts";
import { plural } from "./words.ts";

const SHOWN = 12;
const TICKS_A_ROW = 6;

const tripWords = (turn: Turn, trip: Trip): string => {
  const leaves = sayDay(Temporal.PlainDate.from(trip.leaves), turn.today);
  const back =
    trip.returns === null ? "" : `, back ${sayDay(Temporal.PlainDate.from(trip.returns), turn.today)}`;
  const miles = trip.miles === null ? "" : `, about ${trip.miles.toLocaleString("en-US")} miles`;
  return `Leaving ${leaves}${back}${miles}.`;
};

/** What is open, due, likely to fail or to be bought before a trip, worst first, with what is ticked marked. */
export const leavingReply = (turn: Turn, trip: Trip, items: readonly LeavingItem[]): Reply => {
  const head = tripWords(turn, trip);
  if (items.length === 0)
    return { text: `${head} Nothing is open and nothing falls due on the way. Good roads.` };
  const shown = items.slice(0, SHOWN);
  const done = new Set(trip.ticked);
  const lines = shown.map(
    ({ key, text, short }, index) => `${index + 1}. ${done.has(key) ? `Done: ${short}` : text}`,
  );
  const left = items.filter(({ key }) => !done.has(key)).length;
  const more = items.length > shown.length ? `\n…and ${items.length - shown.length} lesser things.` : "";
  const ticks = shown.map(
    ({ key }, index): Button => ({
      label: `${done.has(key) ? "✓ " : ""}${index + 1}`,
      tap: { tap: "tick", line: key },
    }),
  );
  const rows = [ticks.slice(0, TICKS_A_ROW), ticks.slice(TICKS_A_ROW)].filter((row) => row.length > 0);
  const count =
    left === 0
      ? "All seen to. Good roads."
      : `${plural(left, "thing")} to see to, worst first. Tap a number when it is done.`;
  return {
    text: `${head} ${count}\n${lines.join("\n")}${more}`,
    buttons: rows,
    shows: { lines: shown.map(({ key }) => key) },
  };
};

/** Welcomes people home and asks how the fixes that are near their look have held. */
export const homeReply = (turn: Turn, asked: readonly RecordId[]): Reply => {
  if (asked.length === 0)
    return {
      text: "Welcome home. The trip is closed. Tell me how far you towed, and what did not hold, if anything.",
    };
  turn.store.looks.nudged(asked, turn.now.toString());
  const { text, buttons } = lookList(turn, asked);
  return {
    text: `Welcome home. The trip is closed. ${asked.length === 1 ? "How did this one hold?" : "How did these hold?"}\n${text}`,
    buttons: buttons ?? [],
    shows: { of: "nudge", records: [...asked] },
  };
};
