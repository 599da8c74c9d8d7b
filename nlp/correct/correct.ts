import type { Change, Correction, Target } from "../../shared/memory/correction.ts";
import { tellsReturn } from "../../shared/memory/work.ts";
import type { Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import { topicOf } from "../ask/topic.ts";
import { scan } from "../read/scan.ts";
import cues from "./cues.json" with { type: "json" };
import { doerIn } from "./person.ts";
import { opened, type Piece, piecesOf, plain, type Strength, says } from "./pieces.ts";
import { shiftIn } from "./shift.ts";
import { aimed, aimedAtRemoval } from "./target.ts";
import { valuesIn } from "./values.ts";

export type Corrected = {
  readonly correction: Correction;
  /** How plainly it was announced as one. */
  readonly strength: Strength;
  /** What follows and is a note of its own. */
  readonly rest: string | null;
};

type Part = {
  readonly changes: readonly Change[];
  readonly not: Partial<RecordFields>;
  readonly target: Target | null;
  readonly strength: Strength;
};

const LAST: Target = { by: "last" };
const PLANNED: Change = { change: "fields", to: { kind: "todo", outcome: null } };
const DONE: Change = { change: "fields", to: { kind: "repair", outcome: "untested", due: null } };

const single = (change: Change, strength: Strength, target: Target = LAST): Part => ({
  changes: [change],
  not: {},
  target,
  strength,
});

const phrased = (words: string, strength: Strength): Part | undefined => {
  const short = words.split(" ").length <= 12;
  if (!short) return undefined;
  if (says(words, cues.part)) return single({ change: "part" }, strength);
  if (says(words, cues.join)) return single({ change: "join" }, strength);
  if (says(words, cues.planned)) return single(PLANNED, strength);
  return says(words, cues.done) ? single(DONE, strength) : undefined;
};

/** Words that nothing accounts for may stand in a plain correction, not in one that only looks like it. */
const MOST_LEFT: Record<Strength, number> = { strong: 2, weak: 1, none: 0 };
const MOST_WORDS: Record<Strength, number> = { strong: 16, weak: 12, none: 10 };

/** Without a plain opening, only these begin a correction: "that was last Tuesday", "number two was ...", "the shop did it". */
const LEAD =
  /^(?:(?:it|that|this|they|those) (?:was|is|were|wasnt|isnt|should|cost|came)|its|thats|not|(?:number|no|nr) (?:\d|one|two|three|four|five|six) (?:was|is|were|isnt|wasnt|should|cost)|(?:the )?(?:first|second|third|last) one (?:was|is|wasnt|isnt|cost|should)|the (?:cost|price|total|date|bill|place|material|sealant|glue|tape|grease) (?:was|is|should|came|wasnt|isnt)|(?:the|my|our) (?:[a-z]+ ){1,3}did (?:it|that|this|them|those|number)|(?:i|we) (?:only |actually |just )?(?:used|meant|paid)|(?:date|cost|price|place|material|total|amount)s? (?:should|is|was|to)|(?:i|we) (?:only |just |really |actually )?[a-z]+ (?:it|that|them)\b|(?:wasnt|not) (?:me|us)\b|all (?:i|we) did was|(?:both|they all|all|all of (?:those|them|these)|everything) (?:was|were)\b|(?:used|with|some) |didnt [a-z]+ (?:it|that)\b|[a-z]+ed (?:it|that|them)$|(?:the )?(?:bill|receipt|invoice|tax|total) (?:came|was|says|said|made|is|shows)\b|(?:it )?(?:turned out|ended up|worked out))/;
const CONTRAST =
  /^\S+(?: \S+){0,5} (?:(?<!\b(?:would|will|could|can|do|does|did|is|are|was|were|has|have|had|should|must|might|may) )not(?! \w+ing\b)|instead of|rather than) \S+(?: \S+){0,4}$/;
/** Work on a named thing by the speaker is a note of its own. */
const WORKED = /^(?:also )?(?:i|we) (?:also |then |just |even )?(?!meant|mean|used|said|paid)/;

const tellsWork = (body: string): boolean => {
  if (!WORKED.test(body)) return false;
  const { named, actions } = topicOf(body);
  return actions.length > 0 && (named[0]?.sure ?? 0) >= 0.6;
};

const hasDeed = (body: string): boolean => topicOf(body).actions.length > 0;

/** "The day before", with next to nothing else. */
const isShift = (body: string): boolean => body.split(" ").length <= 6 && shiftIn(body) !== undefined;

const begins = (body: string, strength: Strength, hasDeed: boolean): boolean => {
  if (
    strength === "strong" ||
    LEAD.test(body) ||
    CONTRAST.test(body) ||
    isShift(body) ||
    doerIn(body, "none") !== undefined
  )
    return true;
  return strength === "weak" && !hasDeed;
};

const REWORDED =
  /^(?:(?:it|that|this|they|those) (?:was|were|is|are|should be)|its|thats|i used|we used|i meant|used)? ?(?:(?:the|a|an|some|just|with) )*(\S+(?: \S+){0,3}) (?:not|instead of|rather than) (?:(?:the|a|an|some|with) )*(\S+(?: \S+){0,3})$/;

/** "It was pinchweld rubber, not bulb rubber", in words that no table knows. */
const contrasted = (body: string): Change | undefined => {
  const [, to, instead] = REWORDED.exec(body) ?? [];
  const points = /^(?:its?|thats?|this|they|those)$/.test(to ?? "");
  return to === undefined || instead === undefined || points ? undefined : { change: "phrase", to, instead };
};

/** "The water heater": a name, not news of it. */
const isBareThing = (body: string): boolean => /^(?:the|a|an|my|our) \S+(?: \S+)?$/.test(body);

/** "The tape didn't hold": how something does is news, not a correction. */
const narrates = (text: string, body: string, moment: Moment): boolean => {
  if (isBareThing(body) || CONTRAST.test(body) || doerIn(body, "strong") !== undefined) return false;
  const { verdicts, faults, times, amounts } = scan(text, moment);
  return tellsReturn(body) || (verdicts.length + faults.length > 0 && times.length + amounts.length === 0);
};

/** "Scratch that I flushed the fresh tank": what follows says what it was. */
const CONTENT = /^(?:i|we|it|that|its|thats|should|make|this) (?!one\b|last\b)\S+ \S+/;

/** "The first one wasn't today": denies only, and leads up to what it was. */
const DENIES = /^(?:\S+ ){0,4}?(?:wasnt|isnt|werent|didnt|not) /;

/** What the last words show to be put right: "the gray tank I mean". */
const MEANT_AT_END = / (?:i mean|i meant|sorry|is what i meant|i should say|i should have said)$/;

const partOf = (piece: Piece, moment: Moment, announced: Strength): Part | undefined => {
  const { strength: announcedOwn, removes, body: whole } = opened(piece.words);
  const own = MEANT_AT_END.test(whole) ? "strong" : announcedOwn;
  const body = whole.replace(MEANT_AT_END, "");
  const strength = own === "none" ? announced : own;
  if (removes && !CONTENT.test(body))
    return { changes: [{ change: "remove" }], not: {}, target: aimedAtRemoval(body), strength: "strong" };
  if (body === "") return { changes: [], not: {}, target: null, strength };
  const phrase = phrased(body, strength);
  if (phrase !== undefined) return phrase;
  if (body.split(" ").length > MOST_WORDS[strength]) return undefined;
  const aim = aimed(body);
  if (
    (own !== "strong" && tellsWork(body)) ||
    !(begins(body, strength, hasDeed(body)) || LEAD.test(aim.body))
  )
    return undefined;
  if (narrates(piece.text, body, moment)) return undefined;
  const values = valuesIn(aim.body, moment, strength, piece.words);
  const counted = values.changes.some(
    ({ change }) => change === "number" || change === "date" || change === "done-by",
  );
  const loosely = values.leftover > 0 || values.changes.length === 0;
  const reworded = !counted && loosely ? contrasted(aim.body) : undefined;
  if (reworded !== undefined) return { changes: [reworded], not: {}, target: null, strength };
  const loose = strength === "none" && aim.target.by === "topic" && !CONTRAST.test(body);
  if (loose) return undefined;
  if (values.changes.length === 0 && (aim.target.by === "number" || DENIES.test(body))) {
    return { changes: [], not: values.not, target: aim.target.by === "last" ? null : aim.target, strength };
  }
  const empty = values.changes.length === 0 && Object.keys(values.not).length === 0;
  if (empty || values.leftover > MOST_LEFT[strength]) return undefined;
  return { ...values, target: aim.target.by === "last" ? null : aim.target, strength };
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

/** The stretches from the start that put something right, with one aside at most between them, up to the first other. */
const take = (pieces: readonly Piece[], moment: Moment): Taken => {
  const parts: Part[] = [];
  let announced: Strength = "none";
  let next = 0;
  for (const [at, piece] of pieces.entries()) {
    const part = partOf(piece, moment, announced);
    const removed = parts.some(({ changes }) => changes.some(({ change }) => change === "remove"));
    if (part === undefined && removed && isReason(piece.words)) next = at + 1;
    else if (part === undefined && (next < at || !isAside(piece.words))) break;
    else if (part !== undefined && (next === at || follows(part, piece, announced))) {
      announced = part.strength === "none" ? "weak" : part.strength;
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
    (change) => change.change === "fields" || change.change === "date" || change.change === "materials",
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
  if (words.split(" ").length > LOOSE_WORDS || hasDeed(words)) return undefined;
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
