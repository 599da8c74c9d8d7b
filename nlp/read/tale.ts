import type { Build } from "./build.ts";
import { isPastPoint } from "./past-points.ts";
import type { TimeRef } from "./scan.ts";
import type { Event } from "./told.ts";
import { startingIn } from "./windows.ts";
import { listed, PEOPLE } from "./words.ts";

const LINKS = listed("datesTellingOn");
const FARTHEST = 6;

/** "and I tightened the bolts": joining words, somebody and a deed, with no new thing spoken of first. */
const tellsOn = ({ clauses, deeds, scan }: Build, at: number): boolean => {
  const clause = clauses[at];
  if (clause === undefined || clause.hard) return false;
  const deed = startingIn(deeds, clause.from, clause.to)[0];
  if (deed?.status !== "done") return false;
  return scan.tokens.slice(clause.from, deed.at).every(({ norm }) => LINKS.has(norm) || PEOPLE.has(norm));
};

/** "Yesterday I resealed the vent, I tightened the ladder, I greased the jack": the time of a tale told on in one breath. */
export const taleTime = (event: Event, build: Build): TimeRef | undefined => {
  const { clauses, times, today, scan } = build;
  const start = event.deeds.find((deed) => deed.sense !== "prep")?.clause ?? event.deeds[0]?.clause ?? 0;
  for (let at = start; at > start - FARTHEST && tellsOn(build, at); at--) {
    const { from, to } = clauses[at - 1] ?? { from: 0, to: 0 };
    const past = startingIn(times, from, to).findLast((time) => time.to <= to && isPastPoint(time, today));
    if (past !== undefined) return past;
    if (startingIn(scan.verdicts, from, to).length > 0) return undefined;
  }
  return undefined;
};
