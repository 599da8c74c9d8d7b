import type { Change, Correction } from "../../shared/memory/correction.ts";
import type { Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import { topicOf } from "../ask/topic.ts";
import { scan } from "../read/scan.ts";
import cues from "./cues.json" with { type: "json" };
import { OWNS_UP } from "./owning-up.ts";
import { LAST, type Part, partOf } from "./part.ts";
import { opened, type Piece, piecesOf, plain, type Strength, says } from "./pieces.ts";
import { CONTRAST, hasDeed, MEANT_AT_END, tellsWork } from "./signs.ts";
import { valuesIn } from "./values.ts";

export type Corrected = {
  readonly correction: Correction;
  /** How plainly it was announced as one. */
  readonly strength: Strength;
  /** What follows and is a note of its own. */
  readonly rest: string | null;
};

const isReason = (words: string): boolean =>
  words.split(" ").length <= 9 &&
  (says(words, cues.reasons) || /^(?:it|that|i|this) (?:was|were|wasnt|am|meant)\b/.test(words));

type Taken = { readonly parts: readonly Part[]; readonly next: number };

const ASIDE_WORDS = 7;

/** A few words on the way that put nothing right and tell of nothing: "it was on sale". */
const isAside = (words: string): boolean =>
  words.split(" ").length <= ASIDE_WORDS && !tellsWork(words) && (topicOf(words).named[0]?.sure ?? 0) < 0.9;

/** Before anything was announced, an aside may only lead up to a plain contrast. */
const follows = (part: Part, piece: Piece, announced: Strength): boolean =>
  announced !== "none" || part.strength === "strong" || CONTRAST.test(piece.words);

const OWNED_UP = new RegExp(`\\b${OWNS_UP}\\b`);

/** "I read the slip wrong": says that what stands before it puts something right. */
const ownsUp = ({ words }: Piece): boolean =>
  words.split(" ").length <= ASIDE_WORDS + 2 && OWNED_UP.test(words);

const FORGOT = /^(?:i )?(?:had |d )?(?:forgot|forgotten|left out|missed|didnt (?:count|include)) /;

/** "37, I forgot the hoses": what was left out is the reason for another sum. */
const isLeftOut = ({ words }: Piece, parts: readonly Part[]): boolean =>
  FORGOT.test(words) &&
  parts.some(({ changes }) =>
    changes.some(
      (change) => change.change === "number" || (change.change === "fields" && "cost" in change.to),
    ),
  );

/** "It wasn't screws": denies what was told. */
const DENIES_IT =
  /^(?:and |but )?(?:it|that|they) (?:wasnt|werent|isnt|arent|was not|were not) (?!me\b|us\b)/;

/** Whether what stands in a message shows it to be a correction, however it begins. */
const ownedUp = (pieces: readonly Piece[]): boolean =>
  pieces.some((piece, at) => ownsUp(piece) || (at > 0 && DENIES_IT.test(piece.words)));

/** The stretches from the start that put something right, with one aside at most between them, up to the first other. */
const take = (pieces: readonly Piece[], moment: Moment): Taken => {
  const parts: Part[] = [];
  let announced: Strength = ownedUp(pieces) ? "strong" : "none";
  let next = 0;
  for (const [at, piece] of pieces.entries()) {
    const isReasonFor = at > 0 && (ownsUp(piece) || isLeftOut(piece, parts));
    const part: Part | undefined = isReasonFor ? undefined : partOf(piece, moment, announced);
    const removed = parts.some(({ changes }) => changes.some(({ change }) => change === "remove"));
    if (part === undefined && removed && isReason(piece.words)) next = at + 1;
    else if (part === undefined && (next < at || !(isReasonFor || isAside(piece.words)))) break;
    else if (part !== undefined && (next === at || follows(part, piece, announced))) {
      if (part.strength !== "none") announced = part.strength;
      else if (opened(piece.words).body !== "") announced = "weak";
      parts.push(part);
      next = at + 1;
    }
  }
  return { parts, next };
};

const isRemoval = (change: Change): boolean => change.change === "remove";

/** "Scratch that, it was the gray tank" changes the record; "scratch that, it was the tent" takes it away. */
const settled = (changes: readonly Change[]): readonly Change[] => {
  const others = changes.filter((change) => !isRemoval(change));
  const apart = others.filter((change) => change.change === "part" || change.change === "join");
  if (apart.length > 0) return apart.slice(0, 1);
  const named = others.some(
    ({ change }) =>
      change === "fields" || change === "date" || change === "materials" || change === "done-by",
  );
  if (!changes.some(isRemoval)) return changes;
  return named ? others : changes.filter(isRemoval).slice(0, 1);
};

const joined = (had: Change | undefined, more: Change): Change => {
  if (had?.change === "fields" && more.change === "fields") return { ...had, to: { ...had.to, ...more.to } };
  if (had?.change === "materials" && more.change === "materials") {
    return { ...more, drop: [...had.drop, ...more.drop], add: [...had.add, ...more.add] };
  }
  if (had?.change === "done-by" && more.change === "done-by" && more.to === "someone else") return had;
  return more;
};

const merged = (changes: readonly Change[]): readonly Change[] => {
  const byKey = new Map<string, Change>();
  for (const change of changes) byKey.set(change.change, joined(byKey.get(change.change), change));
  return [...byKey.values()];
};

/** The correction that a message makes, if it reads as one. Whether there is anything to put right is not looked at. */
export const correct = (text: string, moment: Moment): Corrected | undefined => {
  const pieces = piecesOf(text);
  const { parts, next } = take(pieces, moment);
  const changes = merged(settled(parts.flatMap((part) => part.changes)));
  if (changes.length === 0) return undefined;
  const strengths = parts.map((part) => part.strength);
  const rest = pieces[next] === undefined ? null : text.slice(pieces[next].start).trim();
  return {
    correction: {
      target: parts.find((part) => part.target !== null)?.target ?? LAST,
      changes,
      not: Object.assign({}, ...parts.map((part) => part.not)) as Partial<RecordFields>,
    },
    strength: strengths.includes("strong") ? "strong" : strengths.includes("weak") ? "weak" : "none",
    rest: rest === "" || plain(rest ?? "") === "" ? null : rest,
  };
};

const NAMES_STUFF =
  /^(?:(?:and|also|plus|oh) )*(?:also|plus|with|used|using|some|it was|that was|not|more)\b/;
const LOOSE_WORDS = 9;
const LOOSE: ReadonlySet<Change["change"]> = new Set(["date", "number", "materials", "done-by", "fields"]);
const LOOSE_FIELDS: ReadonlySet<string> = new Set(["cost", "where"]);

const isLoose = (change: Change): boolean =>
  LOOSE.has(change.change) &&
  (change.change !== "fields" || Object.keys(change.to).every((field) => LOOSE_FIELDS.has(field)));

/**
 * A few words that say nothing but a value ("85 actually", "the other side"): a correction right after a note, where
 * they are none of their own.
 */
export const correctLoosely = (text: string, moment: Moment): Corrected | undefined => {
  const words = plain(text);
  if (words.split(" ").length > LOOSE_WORDS || hasDeed(words) || scan(text, moment).verdicts.length > 0)
    return undefined;
  const body = opened(words).body.replace(MEANT_AT_END, "");
  const values = valuesIn(body, moment, "strong", words);
  if (values.changes.some(({ change }) => change === "materials") && !NAMES_STUFF.test(words))
    return undefined;
  if (values.leftover > 0 || values.changes.length === 0 || !values.changes.every(isLoose)) return undefined;
  return {
    correction: { target: LAST, changes: values.changes, not: values.not },
    strength: "none",
    rest: null,
  };
};
