import type { ComponentId } from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import { singular } from "../lexicon/tokens.ts";
import type { Clause } from "./clauses.ts";
import type { Corrected } from "./corrections.ts";
import type { Deed } from "./deed.ts";
import { clauseAt, type Ground, isPartOf, placeTokensOf, tokensOf, wordAt } from "./ground.ts";
import { isMuted } from "./muted.ts";
import { isVerbUse, leadsTo, opensClause, roleOf, switches } from "./roles.ts";
import type { Scan } from "./scan.ts";
import { startingIn, touching } from "./windows.ts";
import { DETERMINERS, listed } from "./words.ts";

/** One thing spoken of: a component, in one of its instances, and the stretches of the note that are about it. */
export type Topic = {
  readonly component: ComponentId;
  readonly ref: ComponentRef;
  readonly mentions: ComponentRef[];
  readonly stretches: { from: number; to: number }[];
  /** Named in one breath with this one: "the smoke alarm and the gas alarm". */
  readonly partner: Topic | null;
};

const nested = (first: readonly string[], second: readonly string[]): boolean => {
  const [a, b] = [first.map(singular), second.map(singular)];
  return a.every((each) => b.includes(each)) || b.every((each) => a.includes(each));
};

/** Another of the same sort: "porch light" after "license plate light". */
const otherOfSort = (a: string, b: string): boolean => {
  const [first, second] = [a.split(" "), b.split(" ")];
  return first.at(-1) === second.at(-1) && !nested(first, second);
};

const LOOK_BACK = 12;

/** The same component, but another piece of it that the note turns to after work on the first. */
const otherPiece = (ground: Ground, known: Topic, ref: ComponentRef): boolean => {
  if (nested(known.ref.words.split(" "), ref.words.split(" ")) || !opensClause(ground, ref)) return false;
  const since = known.mentions.at(-1)?.from ?? known.ref.from;
  return startingIn(ground.deeds, since - LOOK_BACK - 20, ref.from).some(
    (deed) =>
      deed.status === "done" && deed.sense !== "look" && deed.at > since - LOOK_BACK && deed.at < ref.from,
  );
};

const sameThing = (ground: Ground, known: Topic, ref: ComponentRef): boolean =>
  known.component === ref.id && !otherOfSort(known.ref.words, ref.words) && !otherPiece(ground, known, ref);

/** Compound names: in "awning motor" the modifier names the component, in "bathroom ceiling light" the last word. */
const joinCompounds = (scan: Scan, refs: readonly ComponentRef[]): ComponentRef[] => {
  const out: ComponentRef[] = [];
  for (const ref of refs) {
    const last = out.at(-1);
    if (last !== undefined && last.to === ref.from) {
      const [head = "", ...rest] = ref.words.split(" ");
      const modifierNames =
        !last.weak &&
        (ref.weak ||
          isPartOf(last.id, ref.words) ||
          (rest.length > 0 && isPartOf(last.id, head) && isPartOf(last.id, rest.at(-1) ?? "")));
      out[out.length - 1] =
        last.id === ref.id
          ? { ...last, to: ref.to, words: `${last.words} ${ref.words}`, weak: last.weak && ref.weak }
          : modifierNames
            ? { ...last, to: ref.to }
            : { ...ref, from: last.from };
    } else if (last !== undefined && last.to + 1 === ref.from && ["'", "’"].includes(wordAt(scan, last.to)))
      out[out.length - 1] = { ...ref, from: last.from };
    else out.push(ref);
  }
  return out;
};

const COORDINATORS = listed("topicsCoordinators");
const EVERY = new Set(["both", "all", "each", "every"]);
/** "The brakes, both wheels": how far the work went, and no second thing. */
const isReach = ({ id }: ComponentRef, before: readonly string[]): boolean =>
  id === "wheel" && !before.includes("and") && before.some((word) => EVERY.has(word));

export const coordinated = (
  { scan, placeTokens }: Ground,
  first: ComponentRef,
  second: ComponentRef,
): boolean => {
  if (second.from - first.to > 4 || second.from <= first.to) return false;
  const between = scan.tokens.slice(first.to, second.from).map((token) => token.norm);
  return (
    !isReach(second, between) &&
    between.some((word) => COORDINATORS.has(word)) &&
    between.every(
      (word, at) => COORDINATORS.has(word) || DETERMINERS.has(word) || placeTokens.has(first.to + at),
    )
  );
};

const PRONOUNS = new Set(["it", "them", "that", "one", "ones", "those"]);

/** Where the noun phrase of a mention begins. */
const phraseStart = ({ scan, placeTokens }: Ground, ref: ComponentRef, floor: number): number => {
  let from = ref.from;
  while (from > floor && (DETERMINERS.has(wordAt(scan, from - 1)) || placeTokens.has(from - 1))) from--;
  return from;
};

/** Clauses before that hold nothing but a time ("underneath, that's labor day a year ago") set the scene for what follows. */
const frameStart = ({ scan, deeds }: Ground, clauses: readonly Clause[], at: number): number => {
  const clause = clauses[at - 1];
  if (clause === undefined) return clauses[at]?.from ?? 0;
  const inside = (ref: { readonly from: number }) => ref.from >= clause.from && ref.from < clause.to;
  const empty = ![deeds, scan.verdicts, scan.faults, scan.components, scan.amounts]
    .flatMap((refs) => startingIn(refs as readonly { readonly from: number }[], clause.from, clause.to))
    .some(inside);
  return empty && startingIn(scan.times, clause.from, clause.to).length > 0
    ? clause.from
    : (clauses[at]?.from ?? clause.to);
};

/** What comes before the mention in its clause and is complete without it belongs to what was spoken of before. */
export const topicStart = (ground: Ground, ref: ComponentRef): number => {
  const clause = clauseAt(ground, ref.from);
  const whole = frameStart(ground, ground.clauses, ground.index[ref.from] ?? 0);
  if (clause.hard) return whole;
  const phrase = phraseStart(ground, ref, clause.from);
  const times = startingIn(ground.scan.times, clause.from, phrase);
  const ends = [
    ...startingIn(ground.scan.verdicts, clause.from, phrase),
    ...startingIn(ground.scan.amounts, clause.from, phrase),
  ]
    .filter((each) => each.to <= phrase)
    .filter((each) => times.every((time) => each.to <= time.from || each.to >= time.to))
    .map((each) => each.to);
  for (const deed of touching(ground.deeds, clause.from, phrase)) {
    if (deed.at < clause.from || deed.at >= phrase) continue;
    for (let at = deed.at + 1; at < phrase; at++)
      if (PRONOUNS.has(wordAt(ground.scan, at))) ends.push(at + 1);
  }
  return ends.length === 0 ? whole : Math.max(...ends);
};

/** The only thing named in a clause that tells of work or trouble: "laid a bead round the skylight". */
const aloneInClause = (ground: Ground, refs: readonly ComponentRef[], at: number): boolean => {
  const ref = refs[at];
  const clause = ref && ground.index[ref.from];
  if (
    ref === undefined ||
    ref.weak ||
    !ground.deeds.some((deed) => deed.clause === clause && deed.status !== "talk")
  )
    return false;
  return [refs[at - 1], refs[at + 1]].every(
    (other) => other === undefined || ground.index[other.from] !== clause,
  );
};

/** Nobody names one thing more often in a note; where somebody does, it counts as another from there on. */
const MOST_MENTIONS = 60;
const isFull = (topic: Topic): boolean => topic.mentions.length >= MOST_MENTIONS;

const closeAt = (topic: Topic, at: number): void => {
  const last = topic.stretches.at(-1);
  if (last !== undefined) last.to = Math.max(last.from, Math.min(last.to, at));
};

/** Every component named as a thing, compounds joined, muted ones too. */
export const mentionsIn = (ground: Ground): ComponentRef[] =>
  joinCompounds(
    ground.scan,
    ground.fixed.components.filter((each) => !isVerbUse(ground, each)),
  );

/** Finds what the note speaks of, stretch by stretch. */
export const topicsOf = (
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
  deeds: readonly Deed[],
  fixed: Corrected,
  muted: Uint8Array,
): Topic[] => {
  const takenTokens = tokensOf(scan.amounts);
  const ground: Ground = {
    scan,
    clauses,
    index,
    deeds,
    fixed,
    muted,
    takenTokens,
    placeTokens: placeTokensOf(scan),
  };
  const topics: Topic[] = [];
  let current: Topic | undefined;
  let before: ComponentRef | undefined;
  let clauseTopic: ComponentRef | undefined;
  let lastClause = -1;
  let led = false;
  let lastTopicRef: ComponentRef | undefined;
  const refs = joinCompounds(
    scan,
    fixed.components.filter((each) => !isMuted(muted, each.from) && !isVerbUse(ground, each)),
  );
  for (const [at, ref] of refs.entries()) {
    const clause = index[ref.from] ?? 0;
    if (clause !== lastClause) clauseTopic = undefined;
    lastClause = clause;
    if (leadsTo(ground, ref, refs[at + 1])) {
      led = true;
      continue;
    }
    const role = led ? "topic" : roleOf(ground, ref, before);
    led = false;
    before = ref;
    const promoted = role === "place" && current === undefined && aloneInClause(ground, refs, at);
    if (!promoted && !switches(ground, ref, role, current?.mentions.at(-1), clauseTopic)) continue;
    const start = clauseTopic === undefined ? topicStart(ground, ref) : ref.from;
    clauseTopic = ref;
    const previous = lastTopicRef;
    lastTopicRef = ref;
    if (current !== undefined && !isFull(current) && sameThing(ground, current, ref)) {
      current.mentions.push(ref);
      continue;
    }
    if (current !== undefined) closeAt(current, start);
    const partner =
      current !== undefined && previous !== undefined && coordinated(ground, previous, ref) ? current : null;
    const known = topics.findLast((topic) => !isFull(topic) && sameThing(ground, topic, ref));
    current = known ?? { component: ref.id, ref, mentions: [], stretches: [], partner };
    if (known === undefined) topics.push(current);
    current.mentions.push(ref);
    current.stretches.push({ from: start, to: scan.tokens.length });
  }
  return topics;
};
