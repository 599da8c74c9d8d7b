import type { ComponentId } from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import { CLAIMS, DROP, PLACE_INDEX, PLACES } from "../lexicon/lexicon.ts";
import type { Clause } from "./clauses.ts";
import type { Corrected } from "./corrections.ts";
import type { Deed } from "./deeds.ts";
import type { Scan, Stretch } from "./scan.ts";
import { DETERMINERS, GENERIC_PARTS, USE_VERBS } from "./words.ts";

/** One thing spoken of: a component, in one of its instances, and the stretches of the note that are about it. */
export type Topic = {
  readonly component: ComponentId;
  readonly ref: ComponentRef;
  readonly mentions: ComponentRef[];
  readonly stretches: { from: number; to: number }[];
};

type Role = "topic" | "object" | "place" | "with";

type Ground = {
  readonly scan: Scan;
  readonly clauses: readonly Clause[];
  readonly index: Int32Array;
  readonly deeds: readonly Deed[];
  readonly fixed: Corrected;
  readonly placeTokens: ReadonlySet<number>;
  /** Tokens that are not told of as ours and now: questions, other people's rigs, jokes. */
  readonly muted: Uint8Array;
};

const word = (scan: Scan, at: number): string => scan.tokens[at]?.norm ?? "";

/** Index of the first word to the left that is no determiner, place or plain adjective. */
const leftOf = ({ scan, placeTokens }: Ground, at: number, floor: number): number => {
  let left = at - 1;
  while (left >= floor && at - left < 7) {
    const text = word(scan, left);
    if (
      !DETERMINERS.has(text) &&
      !DROP.has(text) &&
      !placeTokens.has(left) &&
      scan.tokens[left]?.norm !== "-"
    )
      break;
    left--;
  }
  return left;
};

const partOf = (component: ComponentId, words: string): boolean => {
  const last = words.split(" ").at(-1) ?? words;
  const claims = CLAIMS.get(component);
  return claims?.has(words) === true || claims?.has(last) === true;
};

const roleOf = (ground: Ground, ref: ComponentRef, before: ComponentRef | undefined): Role => {
  const { scan, clauses, index, deeds } = ground;
  const clause = clauses[index[ref.from] ?? 0];
  const left = leftOf(ground, ref.from, clause?.from ?? 0);
  const preposition = left < (clause?.from ?? 0) ? "" : word(scan, left);
  if (preposition === "with") return "with";
  if (deeds.some((deed) => deed.from <= left && left < deed.to && deed.sense !== "apply")) return "topic";
  if (PLACES.always.has(preposition)) return "place";
  if (!PLACES.often.has(preposition)) return "topic";
  const touches = before !== undefined && before.to === left;
  if (touches && !before.weak) return "place";
  return "object";
};

/** The clause says something of its own: a deed, a fault, a verdict. */
const saysSomething = ({ deeds, scan, clauses, index }: Ground, at: number): boolean => {
  const clause = clauses[index[at] ?? 0];
  if (clause === undefined) return false;
  const within = (ref: Stretch) => ref.from >= clause.from && ref.from < clause.to;
  return (
    deeds.some((deed) => within(deed) && deed.status !== "talk") ||
    scan.faults.some(within) ||
    scan.verdicts.some(within)
  );
};

/** Another of the same sort: "porch light" after "license plate light". */
const otherOfSort = (a: string, b: string): boolean => {
  const [first, second] = [a.split(" "), b.split(" ")];
  if (first.at(-1) !== second.at(-1)) return false;
  const [less, more] = first.length < second.length ? [first, second] : [second, first];
  return !less.every((each) => more.includes(each));
};
const sameThing = (a: ComponentRef, b: ComponentRef): boolean =>
  a.id === b.id && !otherOfSort(a.words, b.words);

/** Whether a weak word starts a thing of its own here, though another thing is being spoken of. */
const startsTopic = (ground: Ground, ref: ComponentRef): boolean => {
  const { clauses, index, scan } = ground;
  const clause = clauses[index[ref.from] ?? 0];
  if (clause?.hard !== true) return false;
  return (
    ref.from - clause.from <= 5 && ["the", "my", "our"].includes(word(scan, leftDeterminer(ground, ref.from)))
  );
};
const leftDeterminer = ({ scan, placeTokens }: Ground, at: number): number => {
  let left = at - 1;
  while (left >= 0 && placeTokens.has(left)) left--;
  return DETERMINERS.has(scan.tokens[left]?.norm ?? "") ? left : at;
};

const governedByUse = (ground: Ground, ref: ComponentRef): boolean =>
  USE_VERBS.has(word(ground.scan, leftOf(ground, ref.from, 0)));

const hasPronounObject = ({ scan }: Ground, from: number, to: number): boolean => {
  for (let at = from; at < to; at++)
    if (["it", "them", "that", "one", "those", "both"].includes(word(scan, at))) return true;
  return false;
};

/** Whether a mention changes what is being spoken of, given what it was. */
const switches = (
  ground: Ground,
  ref: ComponentRef,
  role: Role,
  current: ComponentRef | undefined,
  inClause: ComponentRef | undefined,
): boolean => {
  if (role === "with") return false;
  if (role === "place") return false;
  if (current !== undefined && (ref.weak || partOf(current.id, ref.words)) && current.id !== ref.id) {
    if (partOf(current.id, ref.words) && !startsTopic(ground, ref)) return false;
    if (ref.weak && GENERIC_PARTS.has(ref.words.split(" ").at(-1) ?? "") && !startsTopic(ground, ref))
      return false;
  }
  if (role === "object") {
    if (inClause !== undefined) return false;
    if (!saysSomething(ground, ref.from)) return current === undefined;
    const clause = ground.clauses[ground.index[ref.from] ?? 0];
    return current === undefined || clause === undefined || !hasPronounObject(ground, clause.from, ref.from);
  }
  if (governedByUse(ground, ref))
    return (
      current === undefined || !ground.deeds.some((deed) => deed.from < ref.from && deed.from > current.from)
    );
  return true;
};

/** Compound names: in "awning motor" the modifier names the component, in "bathroom ceiling light" the last word. */
const joinCompounds = (refs: readonly ComponentRef[]): ComponentRef[] => {
  const out: ComponentRef[] = [];
  for (const ref of refs) {
    const last = out.at(-1);
    if (last !== undefined && last.to === ref.from) {
      const modifierNames = ref.weak || partOf(last.id, ref.words);
      out[out.length - 1] = modifierNames ? { ...last, to: ref.to } : { ...ref, from: last.from };
    } else out.push(ref);
  }
  return out;
};

const placeTokensOf = (scan: Scan): Set<number> => {
  const places = new Set<number>();
  for (const { from, to } of PLACE_INDEX.all(scan.tokens, false))
    for (let at = from; at < to; at++) places.add(at);
  return places;
};

/** Finds what the note speaks of, stretch by stretch. */
export const topicsOf = (
  scan: Scan,
  clauses: readonly Clause[],
  index: Int32Array,
  deeds: readonly Deed[],
  fixed: Corrected,
  muted: Uint8Array,
): Topic[] => {
  const ground: Ground = { scan, clauses, index, deeds, fixed, placeTokens: placeTokensOf(scan), muted };
  const topics: Topic[] = [];
  let current: Topic | undefined;
  let before: ComponentRef | undefined;
  let clauseTopic: ComponentRef | undefined;
  let lastClause = -1;
  for (const ref of joinCompounds(fixed.components.filter((each) => muted[each.from] !== 1))) {
    const clauseAt = index[ref.from] ?? 0;
    if (clauseAt !== lastClause) clauseTopic = undefined;
    lastClause = clauseAt;
    const role = roleOf(ground, ref, before);
    before = ref;
    if (!switches(ground, ref, role, current?.ref, clauseTopic)) continue;
    const start = clauseTopic === undefined ? (clauses[clauseAt]?.from ?? ref.from) : ref.from;
    clauseTopic = ref;
    if (current !== undefined && sameThing(current.ref, ref)) {
      current.mentions.push(ref);
      continue;
    }
    if (current !== undefined) closeAt(current, start);
    const known = topics.find((topic) => sameThing(topic.ref, ref));
    current = known ?? { component: ref.id, ref, mentions: [], stretches: [] };
    if (known === undefined) topics.push(current);
    current.mentions.push(ref);
    current.stretches.push({ from: start, to: scan.tokens.length });
  }
  return topics;
};

const closeAt = (topic: Topic, at: number): void => {
  const last = topic.stretches.at(-1);
  if (last !== undefined) last.to = Math.min(last.to, at);
};
