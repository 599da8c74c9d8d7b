import { sayDate } from "../../shared/edtf.ts";
import type { KeptUsage } from "../../shared/history.ts";
import type { Usage } from "../../shared/record.ts";
import type { Turn } from "../conversation/turn.ts";
import { listed, sayCount, sayExposure } from "./words.ts";

type Counted = Extract<Usage, { readonly count: number }>;

const yearSoFar = (turn: Turn, used: readonly Counted[]): string => {
  const entries = turn.store.history.usage(
    `${turn.today.year}-01-01`,
    turn.today.add({ days: 1 }).toString(),
  );
  const sums = used.flatMap(({ unit }) => {
    const counts = entries.flatMap(({ usage }) =>
      "count" in usage && usage.unit === unit ? [usage.count] : [],
    );
    const count = counts.reduce((sum, each) => sum + each, 0);
    return counts.length < 2 ? [] : [sayExposure({ count, unit })];
  });
  return sums.length === 0 ? "" : ` That makes ${listed(sums)} this year.`;
};

const whenUsed = (turn: Turn, { date }: Usage): string =>
  date === null ? "" : `, ${sayDate(date, turn.today, turn.rig.hemisphere)}`;

/** "Logged: 212 miles and 3 nights, today. That makes 1,840 miles and 31 nights this year."; one line for each day or stretch. */
export const usageLines = (turn: Turn, all: readonly Usage[]): string[] => {
  const counted = all.filter((usage) => "count" in usage);
  const days = [...new Set(counted.map(({ date }) => date))];
  return [
    ...days.map((day) => {
      const used = counted.filter(({ date }) => date === day);
      const [first] = used;
      const when = first === undefined ? "" : whenUsed(turn, first);
      return `Logged: ${listed(used.map(sayExposure))}${when}.${yearSoFar(turn, used)}`;
    }),
    ...all.flatMap((usage) =>
      "reading" in usage
        ? [`Logged: the meter at ${sayCount(usage.reading)} ${usage.unit}${whenUsed(turn, usage)}.`]
        : [],
    ),
  ];
};

/** Asks about a meter that runs backwards. */
export const backwardsLine = (turn: Turn, { usage }: KeptUsage): string => {
  const reading = "reading" in usage ? `${sayCount(usage.reading)} ${usage.unit}` : "";
  const when = usage.date === null ? "" : ` (${sayDate(usage.date, turn.today, turn.rig.hemisphere)})`;
  return `That does not go with the ${reading} that you told me before${when}. Which one is right? Say “no,” and the number to change this one.`;
};
