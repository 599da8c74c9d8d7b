import type { Scan } from "./scan.ts";
import { WHO } from "./somebody.ts";
import { PREPOSITIONS } from "./words.ts";

/** What makes somebody do it: "had the shop repack the hubs". */
export const CAUSES: ReadonlySet<string> = new Set(["had", "helped", "made", "watched", "let"]);

/** As far before the deed, in words, as it may stand; and as far behind it as whoever is to do it. */
const AFAR = 9;
const BEHIND = [1, 2, 3];

const word = ({ tokens }: Scan, at: number): string => tokens[at]?.norm ?? "";

/** "Had the fella at the trailer yard | repack the hubs": somebody, and where he is, stands between. */
export const causedFromAfar = (scan: Scan, from: number, at: number): boolean => {
  for (let had = at - 1; had >= Math.max(from, at - AFAR); had--) {
    if (!CAUSES.has(word(scan, had))) continue;
    const who = BEHIND.map((gap) => had + gap).find((each) => each < at && WHO.has(word(scan, each)));
    return who !== undefined && PREPOSITIONS.has(word(scan, who + 1));
  }
  return false;
};
