import type { Cue } from "../lexicon/lexicon.ts";
import { CAUSES, causedFromAfar } from "./caused.ts";
import type { Clause } from "./clauses.ts";
import type { ActRef, Scan } from "./scan.ts";
import { startingIn } from "./windows.ts";
import {
  AUXILIARIES,
  DETERMINERS,
  listed,
  NEGATIVES,
  PEOPLE,
  PERFECT,
  PREPOSITIONS,
  SUBJECTS,
  TO_DONE,
} from "./words.ts";

/**
 * How a verb is meant: the work was done, is intended, was not done, serves a deed told before ("to stop the leak"),
 * or is only talked about (advice, questions, habits).
 */
export type Status = "done" | "plan" | "not" | "purpose" | "talk";

/** Cues by the token after them, for looking to the left. */
export type CueEnds = ReadonlyMap<number, readonly Cue[]>;
export const cueEnds = (scan: Scan): CueEnds => {
  const ends = new Map<number, Cue[]>();
  for (const cue of scan.cues) ends.set(cue.to, [...(ends.get(cue.to) ?? []), cue.value]);
  return ends;
};

const FAR = 8;
const ADVERBS = listed("modalityAdverbs");

type Place = {
  readonly scan: Scan;
  readonly clause: Clause;
  readonly ends: CueEnds;
  readonly at: number;
  /** Where the verbs of the note stand. */
  readonly verbs: ReadonlySet<number>;
  /** Tokens inside a fault or verdict: their "not" is not the verb's. */
  readonly told: ReadonlySet<number>;
};

const word = (scan: Scan, at: number): string => scan.tokens[at]?.norm ?? "";

/** Whether a cue stands to the left in the clause, with nothing of `stop` between. */
const cueBefore = (
  { scan, clause, ends, at }: Place,
  wanted: Cue,
  stop: (word: string) => boolean,
): boolean => {
  for (let left = at; left > clause.from && at - left < FAR; left--) {
    if (ends.get(left)?.includes(wanted) === true) return true;
    if (stop(word(scan, left - 1))) return false;
  }
  return false;
};

const cueInClause = ({ scan, clause }: Place, wanted: Cue): boolean =>
  startingIn(scan.cues, clause.from, clause.to).some(
    (cue) => cue.value === wanted && cue.from >= clause.from && cue.to <= clause.to,
  );

const leftWord = ({ scan, clause, at }: Place): { word: string; at: number } => {
  let left = at - 1;
  while (left >= clause.from && ADVERBS.has(word(scan, left))) left--;
  return { word: left < clause.from ? "" : word(scan, left), at: left };
};

const negated = ({ scan, clause, at, verbs, told }: Place): boolean => {
  for (let left = at - 1; left >= clause.from && at - left <= 4; left--) {
    const token = word(scan, left);
    if (verbs.has(left) || (told.has(left) && left < at - 1)) return false;
    if (NEGATIVES.has(token) && !(token === "no" && left + 1 < at)) return true;
    if (PEOPLE.has(token) && left < at - 1) return false;
  }
  return false;
};

const never = () => false;
const isPerson = (token: string): boolean => PEOPLE.has(token);

const ofInfinitive = (place: Place, toAt: number): Status => {
  const { scan, clause } = place;
  const before = [word(scan, toAt - 1), word(scan, toAt - 2)];
  if (before.some((token) => TO_DONE.has(token)) && !cueBefore({ ...place, at: toAt - 1 }, "plan", never))
    return negated({ ...place, at: toAt }) ? "not" : "done";
  if (negated({ ...place, at: toAt })) return "not";
  if (cueBefore(place, "plan", never)) return "plan";
  return toAt - clause.from <= 1 ? "plan" : "purpose";
};

/** As far before the deed, in words, as whoever does it may stand without a place behind. */
const CLOSE = 4;

/** "had a fella come out and weld it", "helped him lift it". */
const caused = ({ scan, at, clause }: Place, leftAt: number): boolean => {
  const joinedHere = ["and", "come", "out", "over"].includes(word(scan, leftAt));
  const before = scan.tokens
    .slice(Math.max(joinedHere ? 0 : clause.from, at - 9), at)
    .map((token) => token.norm);
  const joined = ["and", "come", "out", "over"].includes(word(scan, leftAt));
  return joined
    ? before.includes("come") && before.includes("had")
    : (before.slice(-CLOSE).some((each) => CAUSES.has(each)) || causedFromAfar(scan, clause.from, at)) &&
        !before.includes("to");
};

const ofBase = (place: Place, isThird: boolean): Status => {
  const left = leftWord(place);
  if (left.word === "to") return ofInfinitive(place, left.at);
  if (negated(place)) return "not";
  if (left.word === "was" || caused(place, left.at)) return "done";
  if (left.word === "did" || left.word === "help" || left.word === "helped") return "done";
  if (cueBefore(place, "plan", never) || left.word === "well" || left.word === "ll") return "plan";
  if (isThird) return "talk";
  if (left.word === "" || left.word === "and" || left.word === "then") return "plan";
  return "talk";
};

const STATES = listed("modalityStates");

/** "putting a new latch on before we roll". */
const isBeforehand = ({ scan, clause, at }: Place): boolean => {
  const after = scan.tokens.slice(at + 1, Math.max(clause.to, at + 8)).map((token) => token.norm);
  return after.some(
    (each, index) =>
      each === "before" &&
      ["we", "i", "the", "next", "it", "he", "she", "they"].includes(after[index + 1] ?? ""),
  );
};

const ofGerund = (place: Place): Status => {
  const left = leftWord(place);
  if (isBeforehand(place)) return "plan";
  if (negated(place)) return "not";
  if (["keep", "kept", "keeps", "stop", "stopped", "before", "without", "than"].includes(left.word))
    return "talk";
  if (cueBefore(place, "plan", never) || ["needs", "need", "needed", "want", "wants"].includes(left.word))
    return "plan";
  if (
    STATES.has(left.word) &&
    !PEOPLE.has(word(place.scan, left.at - 1)) &&
    !["ive", "weve", "hes", "shes", "theyve"].includes(word(place.scan, left.at - 1))
  )
    return "talk";
  if (PREPOSITIONS.has(left.word) && !["by", "after", "of", "with", "up", "about", "to"].includes(left.word))
    return "talk";
  return "done";
};

const ofPast = (place: Place): Status => {
  const left = leftWord(place);
  const words = [left.word, word(place.scan, left.at - 1)];
  if (
    ["should", "could", "would", "shouldve", "couldve"].some((token) => words.includes(token)) &&
    words.includes("have")
  )
    return "talk";
  if (negated(place)) return "not";
  if (cueBefore(place, "plan", isPerson)) return "plan";
  return "done";
};

/** How the verb of an act is meant, from the words to its left. */
export const statusOf = (act: ActRef, place: Place): Status => {
  const forms = act.verb?.forms ?? [];
  if (act.verb === null) return cueInClause(place, "plan") ? "plan" : negated(place) ? "not" : "done";
  const opener = word(place.scan, place.clause.from);
  if (opener === "if" || opener === "unless") return "talk";
  if (["until", "till", "once"].includes(opener) && !negated(place) && act.value.sense !== "look")
    return "plan";
  const past = forms.includes("past") || forms.includes("participle");
  const left = leftWord(place).word;
  if (
    past &&
    forms.includes("base") &&
    (left === "to" ||
      [
        "will",
        "ill",
        "gonna",
        "did",
        "didnt",
        "well",
        "must",
        "should",
        "might",
        "may",
        "let",
        "could",
      ].includes(left))
  )
    return ofBase(place, false);
  if (past) return ofPast(place);
  if (forms.includes("gerund")) return ofGerund(place);
  return ofBase(place, !forms.includes("base"));
};

/** "The foot pulled out of the roof": nobody pulled it. */
const ofItself = (scan: Scan, leftAt: number, nouns: ReadonlySet<number>): boolean => {
  let left = leftAt;
  while (["had", "has", "have", "right", "just", "clean", "already"].includes(word(scan, left))) left--;
  return (
    nouns.has(left) ||
    ["it", "that", "they", "which", "thing", "foot", "one", "tread", "end"].includes(word(scan, left))
  );
};

/** Words that may stand before a verb in its base form. */
const VERBAL_LEFT = listed("modalityVerbalLeft");

/** "sounds like a jet taking off". */
const inSimile = (scan: Scan, at: number): boolean =>
  [1, 2, 3, 4].some(
    (back) => word(scan, at - back) === "like" && ["a", "an"].includes(word(scan, at - back + 1)),
  );

/** "it just did it again": nobody did. */
const didItself = (scan: Scan, leftAt: number): boolean => {
  const left = ADVERBS.has(word(scan, leftAt)) ? word(scan, leftAt - 1) : word(scan, leftAt);
  return ["it", "that", "which", "they", "thing"].includes(left);
};

/** The verb is also the name of a material: "with heat and oil". */
const nounsToo = (scan: Scan, at: number): boolean =>
  scan.materials.some((ref) => ref.from <= at && at < ref.to);

/** An order at the head of a clause has an object: "replace the tire", not "pin in place". */
const takesObject = (scan: Scan, at: number): boolean => {
  const next = word(scan, at);
  return (
    DETERMINERS.has(next) ||
    ["it", "them", "up", "out", "off", "new", "in", "both", "at", "rest", "other"].includes(next) ||
    [...startingIn(scan.components, at, at + 2), ...startingIn(scan.materials, at, at + 2)].some(
      (ref) => ref.from === at || ref.from === at + 1,
    )
  );
};

/** Whether an act's verb is one here and not a noun or adjective ("the seal", "a cracked seal", "wood glue"). */
export const isVerb = (act: ActRef, scan: Scan, clause: Clause, nouns: ReadonlySet<number>): boolean => {
  if (act.verb === null) return true;
  const { at, forms } = act.verb;
  if (inSimile(scan, at)) return false;
  const left = word(scan, act.from - 1);
  const past = forms.includes("past") || forms.includes("participle");
  const base = forms.includes("base") || forms.includes("third");
  if (base && !past && takesObject(scan, at + 1) && causedFromAfar(scan, 0, at)) return true;
  if (nouns.has(at) && !(past && !base && !DETERMINERS.has(left))) return false;
  if (act.value.sense === "prep" && ofItself(scan, act.from - 1, nouns)) return false;
  if (past && !base && ["with", "of", "using"].includes(left) && scan.tokens[at + 1]?.kind === "word")
    return false;
  if (left === "self") return false;
  if (act.value.sense === "generic" && didItself(scan, act.from - 1)) return false;
  if (
    base &&
    !past &&
    scan.tokens
      .slice(Math.max(0, at - 5), at)
      .some((token) => ["had", "made", "helped"].includes(token.norm)) &&
    !nouns.has(at)
  )
    return true;
  if (past && !base)
    return !(
      DETERMINERS.has(left) &&
      left !== "all" &&
      left !== "both" &&
      left !== "that" &&
      left !== "this" &&
      scan.tokens[at + 1]?.kind === "word" &&
      !PREPOSITIONS.has(word(scan, at + 1))
    );
  if (past && base) return !DETERMINERS.has(left) || left === "that" || left === "all";
  if (forms.includes("gerund")) return !(DETERMINERS.has(left) || (AUXILIARIES.has(left) && left === "the"));
  if (left === "was" && ["it", "them", "that"].includes(word(scan, at + 1))) return true;
  if (["and", "or", "then"].includes(left) && nounsToo(scan, at) && !takesObject(scan, at + 1)) return false;
  return (
    (at === clause.from && takesObject(scan, at + 1)) ||
    VERBAL_LEFT.has(left) ||
    SUBJECTS.has(left) ||
    (ADVERBS.has(left) && !["all", "both"].includes(left)) ||
    (PERFECT.has(left) && false)
  );
};
