import type { Action } from "../../shared/vocabulary.ts";
import { DROP, TOOLS } from "../lexicon/lexicon.ts";
import type { MaterialRef } from "../lexicon/materials.ts";
import { nameOf } from "../lexicon/materials.ts";
import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { AUXILIARIES, DETERMINERS, listed, PREPOSITIONS, SUBJECTS } from "./words.ts";

/** Actions for which something unknown may be what was put in or on. */
const OPEN: ReadonlySet<Action> = new Set([
  "patch",
  "seal",
  "refasten",
  "reinforce",
  "rebuild",
  "install",
  "repair",
]);
const STARTS = listed("unknownThingsStarts");
const STOPS = listed("unknownThingsStops");
const MOST_WORDS = 2;
const REACH = 14;

const ends = (scan: Scan, at: number): boolean => {
  const token = scan.tokens[at];
  return (
    token?.kind !== "word" ||
    PREPOSITIONS.has(token.norm) ||
    SUBJECTS.has(token.norm) ||
    DETERMINERS.has(token.norm) ||
    AUXILIARIES.has(token.norm) ||
    STOPS.has(token.norm)
  );
};

const phraseAt = (scan: Scan, at: number): Stretch | undefined => {
  if (!STARTS.has(wordAt(scan, at))) return undefined;
  let from = at;
  while (
    DETERMINERS.has(wordAt(scan, from)) ||
    DROP.has(wordAt(scan, from)) ||
    scan.tokens[from]?.kind === "number"
  )
    from++;
  let to = from;
  while (to - from < MOST_WORDS && !ends(scan, to)) to++;
  return to > from ? { from, to } : undefined;
};

/** Things of no known kind that work was done with: "tied it back on with a shoelace". */
export const unknownThings = (
  event: Event,
  known: readonly MaterialRef[],
  told: Told,
  scan: Scan,
): Stretch[] => {
  if (!OPEN.has(event.action)) return [];
  const taken: readonly Stretch[] = [...known, ...told.topic.mentions, ...told.materials];
  const found: Stretch[] = [];
  for (const deed of event.deeds) {
    for (let at = deed.at; at < Math.min(deed.at + REACH, event.to); at++) {
      if (wordAt(scan, at) !== "with" && wordAt(scan, at) !== "using") continue;
      const phrase = phraseAt(scan, at + 1);
      if (phrase === undefined || taken.some((ref) => ref.from < phrase.to && phrase.from < ref.to)) continue;
      const name = nameOf(scan.tokens.slice(phrase.from, phrase.to));
      const isTool = TOOLS.has(name) || TOOLS.has(name.split(" ").at(-1) ?? "");
      if (!isTool && !found.some((other) => other.from === phrase.from)) found.push(phrase);
    }
  }
  return found;
};
