import type { Build } from "./build.ts";
import type { Stretch } from "./scan.ts";
import type { Told } from "./told.ts";
import { startingIn } from "./windows.ts";

export const NO_CLAUSE = { from: 0, to: 0, hard: true, subordinate: false };

/** The first words of trouble in a stretch, with a little around them. */
export const faultIn = (told: Told, { clauses, index }: Build, from: number, to: number): Stretch | null => {
  const fault = startingIn(told.faults, from, to)[0];
  const clause = fault && clauses[index[fault.from] ?? 0];
  if (fault === undefined || clause === undefined) return null;
  return { from: Math.max(clause.from, fault.from - 4), to: Math.min(clause.to, fault.to + 3) };
};

/** Where the thing is: said with its name, else within the stretch. */
export const whereOf = (told: Told, event: Stretch, { places }: Build): Stretch | undefined => {
  const mention = told.topic.mentions
    .map((ref) => places.ofMention(ref))
    .find((found) => found !== undefined);
  const start = told.topic.stretches[0]?.from ?? event.from;
  const { mentions } = told.topic;
  return (
    mention ?? places.within(event, mentions) ?? places.within({ from: start, to: event.from }, mentions)
  );
};
