import type { ComponentRef } from "../lexicon/components.ts";
import { PLACES, WITHIN } from "../lexicon/lexicon.ts";
import { singular } from "../lexicon/tokens.ts";
import { clauseAt, type Ground, isPartOf, leftOf, wordAt } from "./ground.ts";
import type { Stretch } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";
import { DETERMINERS, GENERIC_PARTS, listed, NEGATIVES, PREPOSITIONS, SUBJECTS, USE_VERBS } from "./words.ts";

/** How a component stands in its clause: spoken of, the object of a preposition, a place, a means, or none of ours. */
export type Role = "topic" | "object" | "place" | "with" | "none";

/** "no luck with the furnace" speaks of it. */
const STATE_OF = listed("rolesStateOf");
const POSTURES = listed("rolesPostures");
const COMPARISONS = new Set(["like", "as", "than", "without"]);
/** Whose thing it is when it is not ours. */
const OTHERS = listed("rolesOthers");
const SUPPOSING = new Set(["where", "if", "unless"]);
/** Prepositions that work goes around or over: "seal around the fan". */
const AROUND = listed("rolesAround");
const TOUCHING = new Set(["seal", "patch", "lubricate", "clean"]);

/** "Dust coming in round the locker door". */
const getsIn = ({ scan }: Ground, left: number): boolean =>
  touching(scan.faults, left, left).some(
    (fault) => fault.to <= left && left - fault.to <= 2 && fault.value === 2,
  );

const workedAround = ({ deeds }: Ground, left: number): boolean =>
  touching(deeds, left, left).some(
    (deed) =>
      deed.to > left - 5 &&
      deed.at < left &&
      (TOUCHING.has(deed.action ?? "") || deed.sense === "apply" || deed.sense === "prep"),
  );

/** The preposition of a phrase with a noun of its own before the name: "in the kids bunk". */
const governing = ({ scan }: Ground, left: number): string => {
  const before = wordAt(scan, left - 2);
  const preposition =
    (PLACES.always.has(before) || PLACES.often.has(before)) && before !== "with" && before !== "to";
  const noun =
    !PREPOSITIONS.has(wordAt(scan, left)) &&
    !touching(scan.components, left, left).some((ref) => ref.from <= left && left < ref.to);
  return preposition && noun && DETERMINERS.has(wordAt(scan, left - 1)) ? before : wordAt(scan, left);
};

export const roleOf = (ground: Ground, ref: ComponentRef, before: ComponentRef | undefined): Role => {
  const { scan, deeds, takenTokens } = ground;
  const clause = clauseAt(ground, ref.from);
  const left = leftOf(ground, ref.from, clause.from);
  const preposition = left < clause.from || takenTokens.has(left) ? "" : governing(ground, left);
  if (
    COMPARISONS.has(preposition) ||
    SUPPOSING.has(wordAt(scan, clause.from)) ||
    OTHERS.has(wordAt(scan, ref.from - 1)) ||
    POSTURES.has(wordAt(scan, left - 1))
  )
    return "none";
  if (preposition === "next" && wordAt(scan, left + 1) !== "to") return "topic";
  if (preposition === "with") return STATE_OF.has(wordAt(scan, left - 1)) ? "topic" : "with";
  if (
    touching(deeds, left, left).some(
      (deed) => deed.from <= left && left < deed.to && deed.sense !== "apply" && deed.status !== "talk",
    )
  )
    return "topic";
  if (PLACES.always.has(preposition))
    return AROUND.has(preposition) && (workedAround(ground, left) || getsIn(ground, left))
      ? "object"
      : "place";
  if (!PLACES.often.has(preposition)) return "topic";
  const touches = before !== undefined && before.to === left;
  return touches && !before.weak ? "place" : "object";
};

const VERBS_TOO = listed("rolesVerbsToo");

/** A single word that is a verb here: "you still catch it", "to drain". */
export const isVerbUse = ({ scan }: Ground, ref: ComponentRef): boolean => {
  if (ref.to - ref.from > 1 || !VERBS_TOO.has(singular(wordAt(scan, ref.from)))) return false;
  const left = wordAt(scan, ref.from - 1);
  if (SUBJECTS.has(left) && !["this", "its", "there"].includes(left)) return true;
  return (
    [
      "to",
      "will",
      "gonna",
      "can",
      "could",
      "would",
      "should",
      "dont",
      "didnt",
      "cant",
      "still",
      "wont",
      "must",
      "not",
    ].includes(left) &&
    (ref.weak || ["can", "could", "would", "will", "cant", "wont"].includes(left))
  );
};

/** "The hinge of the screen door": the weak word is a part of what follows. */
export const leadsTo = (
  { scan, index, placeTokens }: Ground,
  ref: ComponentRef,
  next: ComponentRef | undefined,
): boolean => {
  if (next === undefined || index[next.from] !== index[ref.from] || next.from - ref.to > 4) return false;
  const between = scan.tokens.slice(ref.to, next.from).map((token) => token.norm);
  const joint = between.findIndex((word) =>
    ["of", "on", "for", "in", "from", "to", "around", "round", "at"].includes(word),
  );
  return (
    joint === 0 &&
    between.slice(1).every((word, at) => DETERMINERS.has(word) || placeTokens.has(ref.to + 1 + at)) &&
    (!next.weak || isPartOf(next.id, ref.words)) &&
    (ref.weak || isPartOf(next.id, ref.words))
  );
};

/** The clause says something of its own: a deed, a fault, a verdict. */
export const saysSomething = (ground: Ground, at: number): boolean => {
  const clause = clauseAt(ground, at);
  const within = (ref: Stretch) => ref.from >= clause.from && ref.from < clause.to;
  return (
    touching(ground.deeds, clause.from, clause.to).some((deed) => within(deed) && deed.status !== "talk") ||
    startingIn(ground.scan.faults, clause.from, clause.to).length > 0 ||
    startingIn(ground.scan.verdicts, clause.from, clause.to).length > 0
  );
};

/** The first noun phrase of its clause, with an article or bare. */
export const opensClause = (ground: Ground, ref: ComponentRef): boolean => {
  const clause = clauseAt(ground, ref.from);
  if (ref.from - clause.from > 6) return false;
  for (let at = clause.from; at < ref.from; at++) {
    const word = wordAt(ground.scan, at);
    if (SUBJECTS.has(word) || NEGATIVES.has(word) || (PREPOSITIONS.has(word) && !ground.placeTokens.has(at)))
      return false;
    if (touching(ground.deeds, at, at).some((deed) => deed.at === at)) return false;
  }
  return true;
};

const hasPronounObject = ({ scan }: Ground, from: number, to: number): boolean => {
  for (let at = from; at < to; at++)
    if (["it", "them", "that", "one", "those", "both"].includes(wordAt(scan, at))) return true;
  return false;
};

const isOwnWord = (current: ComponentRef, ref: ComponentRef): boolean => {
  const last = singular(ref.words.split(" ").at(-1) ?? "");
  return (
    (ref.weak || !ref.words.includes(" ")) && current.words.split(" ").some((each) => singular(each) === last)
  );
};

/** "New coupling and two clamps" while speaking of a pipe. */
const namesMaterial = ({ scan }: Ground, ref: ComponentRef): boolean => {
  const left = scan.tokens[ref.from - 1];
  return (
    (left?.kind === "number" ||
      ["new", "fresh", "two", "three", "four", "some", "brass", "plastic", "steel", "proper"].includes(
        left?.norm ?? "",
      )) &&
    touching(scan.materials, ref.from, ref.from).some(
      (material) => material.from <= ref.from && ref.to <= material.to,
    )
  );
};

/** Said in passing of what is spoken of now: a part, or a word too weak to change the subject. */
const belongs = (
  ground: Ground,
  ref: ComponentRef,
  current: ComponentRef,
  inClause: ComponentRef | undefined,
): boolean => {
  if (current.id === ref.id) return false;
  const whole = WITHIN.get(ref.id);
  if (whole !== undefined && ref.weak) return !whole.includes(current.id);
  if (ref.weak && namesMaterial(ground, ref)) return true;
  if (isOwnWord(current, ref)) return true;
  const own = isPartOf(current.id, ref.words);
  const weak = ref.weak && GENERIC_PARTS.has(singular(ref.words.split(" ").at(-1) ?? ""));
  const opening = inClause === undefined && opensClause(ground, ref);
  if (ref.weak && !opening) return true;
  if (!own && !weak) return false;
  const opens = inClause === undefined && opensClause(ground, ref);
  const alone = clauseAt(ground, ref.from).to - ref.to <= 2;
  const phrase = leftOf(ground, ref.from, clauseAt(ground, ref.from).from) + 1;
  const definite = phrase === ref.from || ["the", "my", "our"].includes(wordAt(ground.scan, phrase));
  const strong =
    !ref.weak && (alone || !own) && ["the", "my", "our"].includes(wordAt(ground.scan, ref.from - 1));
  return !(opens && (clauseAt(ground, ref.from).hard ? definite && (!ref.weak || !own) : strong));
};

const usedOnly = (ground: Ground, ref: ComponentRef, current: ComponentRef | undefined): boolean => {
  const verb = wordAt(ground.scan, leftOf(ground, ref.from, clauseAt(ground, ref.from).from));
  if (!USE_VERBS.has(verb)) return false;
  return (
    current !== undefined &&
    (startingIn(ground.deeds, current.from + 1, ref.from).length > 0 ||
      verb.startsWith("cook") ||
      verb.startsWith("let"))
  );
};

/** Whether a mention changes what is being spoken of, given what it was. */
export const switches = (
  ground: Ground,
  ref: ComponentRef,
  role: Role,
  current: ComponentRef | undefined,
  inClause: ComponentRef | undefined,
): boolean => {
  if (role === "with" || role === "place" || role === "none") return false;
  if (current === undefined && ref.weak && WITHIN.has(ref.id)) return false;
  if (current !== undefined && belongs(ground, ref, current, inClause)) return false;
  if (role === "object") {
    if (inClause !== undefined) return false;
    if (!saysSomething(ground, ref.from)) return current === undefined;
    return current === undefined || !hasPronounObject(ground, clauseAt(ground, ref.from).from, ref.from);
  }
  return !usedOnly(ground, ref, current);
};
