import { sayDate } from "../../shared/edtf.ts";
import type { KeptUsage } from "../../shared/history.ts";
import type { Usage } from "../../shared/record.ts";
import type { Turn } from "../conversation/turn.ts";
import { sayCount, sayExposure } from "./words.ts";

const yearSoFar = (turn: Turn, unit: Usage["unit"]): string => {
  const entries = turn.store.history.usage(
    `${turn.today.year}-01-01`,
    turn.today.add({ days: 1 }).toString(),
  );
  const counts = entries.flatMap(({ usage }) =>
    "count" in usage && usage.unit === unit ? [usage.count] : [],
  );
  if (counts.length < 2) return "";
  return ` That makes ${sayExposure({ count: counts.reduce((sum, count) => sum + count, 0), unit })} this year.`;
};

/** "Logged: 212 miles, today. That makes 1,840 miles this year." */
export const usageLine = (turn: Turn, usage: Usage): string => {
  const when = usage.date === null ? "" : `, ${sayDate(usage.date, turn.today, turn.rig.hemisphere)}`;
  if ("reading" in usage) return `Logged: the meter at ${sayCount(usage.reading)} ${usage.unit}${when}.`;
  return `Logged: ${sayExposure(usage)}${when}.${yearSoFar(turn, usage.unit)}`;
};

/** Asks about a meter that runs backwards. */
export const backwardsLine = (turn: Turn, { usage }: KeptUsage): string => {
  const reading = "reading" in usage ? `${sayCount(usage.reading)} ${usage.unit}` : "";
  const when = usage.date === null ? "" : ` (${sayDate(usage.date, turn.today, turn.rig.hemisphere)})`;
  return `That does not go with the ${reading} that you told me before${when}. Which one is right? Say “no,” and the number to change this one.`;
};
