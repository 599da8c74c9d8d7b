import { DROP, KEEP, plainTag } from "../lexicon/lexicon.ts";
import type { MaterialRef } from "../lexicon/materials.ts";
import { nameOf } from "../lexicon/materials.ts";
import { singular } from "../lexicon/tokens.ts";
import { wordAt } from "./ground.ts";
import type { Scan, Stretch } from "./scan.ts";
import { touching } from "./windows.ts";
import {
  AUXILIARIES,
  BREAKERS,
  DETERMINERS,
  listed,
  PREPOSITIONS,
  SUBJECTS,
  SUBORDINATORS,
} from "./words.ts";

/** A noun phrase: its determiners and adjectives from `start`, the words that name the thing from `from`. */
export type Phrase = Stretch & {
  readonly start: number;
  readonly name: string;
  /** The known material that it ends with. */
  readonly ref: MaterialRef | null;
  /** "Two new ones": only stands for a thing. */
  readonly pronoun: boolean;
};

const QUANTITIES = listed("phrasesQuantities");
const STOPS = listed("unknownThingsStops");
const PARTICLES = listed("phrasesParticles");
const PRONOUNS = listed("phrasesPronouns");
/** Pronouns that never stand before a noun. */
const ALONE = new Set(["it", "them", "mine", "ones", "em", "something", "everything", "nothing", "anything"]);
/** "A ten amp": one of that size. */
const UNITS = listed("phrasesUnits");
const INDEFINITE = listed("phrasesIndefinite");
const DEFINITE = new Set(["the", "my", "our", "his", "her", "their", "your", "that", "this"]);
const NEW = listed("usesNew");
const OLD = listed("usesOld");
const MOST_WORDS = 3;
const MOST_OPENERS = 7;
const VERBAL = /^(?:Infinitive|PastTense|PresentTense|Copula|Modal|Auxiliary|Adverb)$/;

const covers = (refs: readonly Stretch[], at: number): boolean =>
  touching(refs, at, at).some((ref) => ref.from <= at && at < ref.to);

const opens = (scan: Scan, at: number): boolean => {
  const word = wordAt(scan, at);
  return (
    covers(scan.numbers, at) ||
    (word === "number" && covers(scan.numbers, at + 1)) ||
    DETERMINERS.has(word) ||
    DROP.has(word) ||
    NEW.has(word) ||
    scan.tokens[at]?.kind === "number" ||
    ["-", "/", "x"].includes(word)
  );
};

const ends = (scan: Scan, at: number, verbs: ReadonlySet<number>): boolean => {
  const token = scan.tokens[at];
  if (token === undefined || verbs.has(at)) return true;
  if (token.norm === "-") return false;
  if (covers(scan.times, at) || covers(scan.amounts, at) || covers(scan.numbers, at)) return true;
  return (
    token.kind !== "word" ||
    PREPOSITIONS.has(token.norm) ||
    PARTICLES.has(token.norm) ||
    SUBJECTS.has(token.norm) ||
    DETERMINERS.has(token.norm) ||
    AUXILIARIES.has(token.norm) ||
    SUBORDINATORS.has(token.norm) ||
    BREAKERS.has(token.norm) ||
    STOPS.has(token.norm)
  );
};

/** A verb in plain English, unless it ends the name of a component: "smoke alarm". */
const isVerbal = (scan: Scan, at: number): boolean =>
  VERBAL.test(plainTag(wordAt(scan, at))) &&
  !touching(scan.components, at, at).some((ref) => ref.from < at && at < ref.to);

const refEndingAt = (scan: Scan, to: number): MaterialRef | undefined =>
  touching(scan.materials, to, to).find((ref) => ref.to === to);

const knownFrom = (scan: Scan, at: number): MaterialRef | undefined =>
  touching(scan.materials, at, at).find((ref) => ref.from <= at && at < ref.to);

/** Past determiners, numbers, plain adjectives and quantities: "two good lengths of". */
const pastOpeners = (scan: Scan, at: number, verbs: ReadonlySet<number>): number => {
  let from = at;
  while (from - at < MOST_OPENERS) {
    const word = wordAt(scan, from);
    if (/^ones?$/.test(word) && from > at && scan.tokens[from - 1]?.kind === "word") break;
    if (PRONOUNS.has(word) && (ALONE.has(word) || (!opens(scan, from + 1) && ends(scan, from + 1, verbs))))
      break;
    if (QUANTITIES.has(wordAt(scan, from)) && wordAt(scan, from + 1) === "of") from += 2;
    else if (opens(scan, from) || (QUANTITIES.has(wordAt(scan, from)) && opens(scan, from + 1))) from++;
    else break;
  }
  return from;
};

/** The noun phrase that starts at a token, or nothing. `verbs`: tokens that are verbs here. */
export const phraseAt = (scan: Scan, start: number, verbs: ReadonlySet<number>): Phrase | undefined => {
  const from = pastOpeners(scan, start, verbs);
  let to = from;
  for (let words = 0; words < MOST_WORDS && !ends(scan, to, verbs); words++) {
    const known = knownFrom(scan, to);
    if (to > from && known === undefined && isVerbal(scan, to)) break;
    to = known === undefined ? to + 1 : known.to;
    if (wordAt(scan, to) === "-") to++;
  }
  const last = wordAt(scan, to);
  if (to === from) {
    const stands = PRONOUNS.has(last) || last === "one" || last === "ones" || wordAt(scan, to - 1) === "one";
    return stands ? { start, from, to: to + 1, name: "", ref: null, pronoun: true } : undefined;
  }
  if (last === "one" || last === "ones" || wordAt(scan, to - 1) === "ones") {
    const kept = scan.tokens.slice(from, to).filter((token) => token.norm !== "ones" && KEEP.has(token.norm));
    return { start, from, to, name: nameOf(kept), ref: null, pronoun: true };
  }
  if (UNITS.has(wordAt(scan, to - 1))) return { start, from, to, name: "", ref: null, pronoun: true };
  const ref = refEndingAt(scan, to) ?? null;
  const words = scan.tokens.slice(from, to).filter((token) => token.kind === "word" && !DROP.has(token.norm));
  return { start, from, to, name: ref?.name ?? nameOf(words), ref, pronoun: false };
};

const says = (scan: Scan, { start, from }: Phrase, set: ReadonlySet<string>): boolean =>
  scan.tokens.slice(start, from + 1).some((token) => set.has(token.norm));

const isPlural = (scan: Scan, phrase: Phrase): boolean => {
  const last = scan.tokens[phrase.to - 1];
  return last !== undefined && last.norm !== last.stem;
};

/** Not known before: "a", "some", "two", "new", or no article at all in front. */
export const isIndefinite = (scan: Scan, phrase: Phrase): boolean =>
  (says(scan, phrase, INDEFINITE) && !says(scan, phrase, DEFINITE)) ||
  says(scan, phrase, NEW) ||
  (phrase.start === phrase.from && isPlural(scan, phrase)) ||
  scan.tokens.slice(phrase.start, phrase.from).some((token) => token.kind === "number");

/** "The old seal", "a broken tile": what was there before, but not "an old inner tube". */
export const isWorn = (scan: Scan, phrase: Phrase): boolean =>
  says(scan, phrase, OLD) &&
  !(
    isIndefinite(scan, phrase) &&
    scan.tokens.slice(phrase.start, phrase.from).some(({ norm }) => norm === "old")
  );

/** The last word, singular. */
export const headOf = (name: string): string => singular(name.split(" ").at(-1) ?? name);
