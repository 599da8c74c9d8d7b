import { nameOf } from "../lexicon/materials.ts";
import { singular } from "../lexicon/tokens.ts";
import type { Deed } from "./deed.ts";
import { governor } from "./governor.ts";
import { wordAt } from "./ground.ts";
import { headOf, isIndefinite, isWorn, type Phrase, phraseAt } from "./phrases.ts";
import type { Scan, Stretch } from "./scan.ts";
import type { Event, Told } from "./told.ts";
import { isWhole } from "./wholes.ts";
import { startingIn } from "./windows.ts";
import { AUXILIARIES, listed, PREPOSITIONS, SUBJECTS } from "./words.ts";

/** A part by what it is called, and the tokens that name it. */
type Part = Stretch & Pick<Phrase, "name">;

const APART: ReadonlySet<string> = new Set([...PREPOSITIONS, "not"]);
const NOT_THINGS = listed("objectsNotThings");
/** How far back, in words, a pronoun may reach. */
const REACH = 40;
/** How near, in words, the subject of a passive stands. */
const NEAR = 14;
const NO_VERBS: ReadonlySet<number> = new Set();
const TRADED = new Set(["for", "with"]);

/** "Pump switch by the door", "geyser's thermostat": the noun alone. */
const nounOf = (scan: Scan, { from, to }: Stretch): string => {
  const tokens = scan.tokens.slice(from, to);
  const end = tokens.findIndex((token, at) => at > 0 && PREPOSITIONS.has(token.norm));
  const noun = end < 0 ? tokens : tokens.slice(0, end);
  const owner = noun.findLastIndex((token) => /['\u2019]s$/.test(token.text));
  return nameOf(noun.slice(owner < noun.length - 1 ? owner + 1 : 0));
};

/** What was taken out: "cut the pan out and put a new one in". */
const takenOut = (told: Told, before: number, scan: Scan): Part[] =>
  startingIn(told.deeds, before - REACH, before).flatMap((deed) => {
    const phrase = deed.sense === "prep" ? phraseAt(scan, deed.at + 1, NO_VERBS) : undefined;
    return phrase === undefined || phrase.pronoun ? [] : [phrase];
  });

/** Parts and components named before a place, and not after a preposition, nearest first. */
const antecedents = (told: Told, before: number, scan: Scan): Part[] => {
  const named: Part[] = [
    ...takenOut(told, before, scan),
    ...startingIn(told.materials, before - REACH, before).map(({ from, to, name }) => ({ from, to, name })),
    ...startingIn(told.topic.mentions, before - REACH, before).map(({ from, to }) => ({
      from,
      to,
      name: nounOf(scan, { from, to }),
    })),
  ];
  return named
    .filter(({ from, to }) => to <= before && before - from < REACH)
    .filter(({ name }) => !NOT_THINGS.has(headOf(name)))
    .filter(({ from }) => !APART.has(wordAt(scan, governor(scan, from))))
    .sort((a, b) => b.to - a.to || a.from - b.from);
};

/** What a pronoun stands for: the part named last before it. */
export const standsFor = (phrase: Phrase, told: Told, scan: Scan): Part | undefined => {
  const meant = antecedents(told, phrase.start, scan)[0];
  if (meant === undefined) return undefined;
  if (phrase.name === "") return meant;
  return { from: phrase.from, to: phrase.to, name: `${phrase.name} ${headOf(meant.name)}` };
};

/** The subject of a passive or the noun before a relative clause: "the flush pump was replaced", "the motor i put in". */
const subjectOf = (deed: Deed, told: Told, scan: Scan): Part | undefined => {
  let to = deed.at;
  while (
    to > 0 &&
    (AUXILIARIES.has(wordAt(scan, to - 1)) ||
      SUBJECTS.has(wordAt(scan, to - 1)) ||
      ["just", "now", "also", "both", "all", "then", "finally"].includes(wordAt(scan, to - 1)))
  )
    to--;
  const named = antecedents(told, to, scan);
  const passive = to < deed.at && AUXILIARIES.has(wordAt(scan, to));
  return (
    named.find((part) => part.to === to) ?? (passive ? named.find((part) => to - part.to < NEAR) : undefined)
  );
};

const TRADES = /^(?:swap|switch|trad|exchang|chang|replac)/;

/** "Swapped it for a compressor fridge": what came in its place. */
const tradedFor = (deed: Deed, scan: Scan, verbs: ReadonlySet<number>): Phrase | undefined => {
  if (!scan.tokens.slice(deed.at, deed.to).some((token) => TRADES.test(token.norm))) return undefined;
  for (let at = deed.at + 1; at < deed.to + NEAR; at++) {
    if (startingIn(scan.amounts, deed.at, at).length > 0) return undefined;
    if (!TRADED.has(wordAt(scan, at))) continue;
    const phrase = phraseAt(scan, at + 1, verbs);
    if (phrase === undefined || phrase.pronoun) continue;
    const bare = phrase.ref !== null && phrase.start === phrase.from;
    if (bare || isIndefinite(scan, phrase)) return phrase;
  }
  return undefined;
};

const objectOf = (deed: Deed, scan: Scan, verbs: ReadonlySet<number>): Phrase | undefined => {
  if (deed.sense === "new") return phraseAt(scan, deed.from, verbs);
  let start = deed.at + 1;
  while (["in", "out", "on", "up"].includes(wordAt(scan, start))) start++;
  const phrase = phraseAt(scan, start, verbs);
  return phrase !== undefined && wordAt(scan, phrase.to) === "back" ? undefined : phrase;
};

const replaces = (deed: Deed): boolean =>
  deed.action === "replace" || deed.sense === "new" || deed.sense === "fit";

/** For a replacement, the part that was replaced, whether named with the deed or before it; nothing when it was the whole. */
export const replacedPart = (
  event: Event,
  told: Told,
  scan: Scan,
  verbs: ReadonlySet<number>,
): Part | undefined => {
  if (event.action !== "replace") return undefined;
  for (const deed of event.deeds.filter(replaces)) {
    const object = tradedFor(deed, scan, verbs) ?? objectOf(deed, scan, verbs);
    const part =
      object === undefined
        ? subjectOf(deed, told, scan)
        : object.pronoun
          ? standsFor(object, told, scan)
          : object;
    if (part === undefined || (object !== undefined && !object.pronoun && isWorn(scan, object))) continue;
    if (isWhole(told.topic.component, part.name)) return undefined;
    if (!NOT_THINGS.has(singular(part.name)) && !NOT_THINGS.has(headOf(part.name))) return part;
  }
  return undefined;
};
