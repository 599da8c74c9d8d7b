import type { Change, Target } from "../../shared/memory/correction.ts";
import type { Moment } from "../../shared/reading.ts";
import type { RecordFields } from "../../shared/record.ts";
import { findNumbers } from "../time/index.ts";
import cues from "./cues.json" with { type: "json" };
import { doerIn } from "./person.ts";
import { opened, type Piece, type Strength, says } from "./pieces.ts";
import {
  begins,
  CONTENT,
  CONTRAST,
  DENIES,
  hasDeed,
  LEAD,
  MEANT_AT_END,
  narrates,
  tellsWork,
} from "./signs.ts";
import { aimed, aimedAtRemoval } from "./target.ts";
import { componentIn, valuesIn } from "./values.ts";

/** What one stretch of a message puts right. */
export type Part = {
  readonly changes: readonly Change[];
  readonly not: Partial<RecordFields>;
  readonly target: Target | null;
  readonly strength: Strength;
};

export const LAST: Target = { by: "last" };
const PLANNED: Change = { change: "fields", to: { kind: "todo", outcome: null } };
const DONE: Change = { change: "fields", to: { kind: "repair", outcome: "untested", due: null } };

const single = (change: Change, strength: Strength, target: Target = LAST): Part => ({
  changes: [change],
  not: {},
  target,
  strength,
});

/** "That's the same tyre I gave you last October, not another one": told before. */
const SAME_AS_TOLD =
  /\b(?:the|that) (?:very )?same (?:\w+ ){1,3}?(?:as |that )?(?:i|we) (?:\w+ )?(?:told|gave|mentioned|said|sent|logged|wrote)\b|\bsame (?:\w+ ){0,2}as (?:the one )?(?:i|we) (?:told|gave|mentioned|said|sent|logged|wrote)\b/;

const phrased = (words: string, strength: Strength): Part | undefined => {
  const length = words.split(" ").length;
  if (length <= 20 && SAME_AS_TOLD.test(words)) return single({ change: "join" }, strength);
  if (length > 12) return undefined;
  if (says(words, cues.part)) return single({ change: "part" }, strength);
  if (says(words, cues.join)) return single({ change: "join" }, strength);
  if (says(words, cues.planned)) return single(PLANNED, strength);
  return says(words, cues.done) ? single(DONE, strength) : undefined;
};

/** Words that nothing accounts for may stand in a plain correction, not in one that only looks like it. */
const MOST_LEFT: Record<Strength, number> = { strong: 2, weak: 1, none: 0 };
const MOST_WORDS: Record<Strength, number> = { strong: 16, weak: 12, none: 10 };

const REWORDED =
  /^(?:(?:it|that|this|they|those) (?:was|were|is|are|should be)|its|thats|i used|we used|i meant|used)? ?(?:(?:the|a|an|some|just|with) )*(\S+(?: \S+){0,3}) (?:not|instead of|rather than) (?:(?:the|a|an|some|with) )*(\S+(?: \S+){0,3})$/;

const isNumber = (words: string): boolean =>
  findNumbers(words).some(({ span }) => span.start === 0 && span.end === words.length);

/** "Copper I said": how it is told, and no word of the stuff. */
const AS_SAID = / (?:i|we) (?:said|meant|mean|wrote|told you)$/;

/** "It was pinchweld rubber, not bulb rubber", in words that no table knows. */
const contrasted = (body: string): Change | undefined => {
  const [, said, instead] = REWORDED.exec(body) ?? [];
  const to = said?.replace(AS_SAID, "");
  const points =
    /^(?:its?|thats?|this|they|those|(?:it|that|they) (?:was|were|is)|(?:this|that) ones?|(?:my|his|her|our) \w+s|i|we|i (?:did|do)|was|were)$/.test(
      to ?? "",
    );
  if (to === undefined || instead === undefined || points || isNumber(to)) return undefined;
  const [right, wrong] = [componentIn(to, NAMED), componentIn(instead, NAMED)];
  return right !== undefined && wrong !== undefined && right !== wrong
    ? { change: "fields", to: { component: right } }
    : { change: "phrase", to, instead };
};

/** A name as sure as this stands for a thing where two are set against each other. */
const NAMED = 0.6;
/** "No, I didn't": it never happened, unless what follows says that it is still to come. */
const DENIED_ALL = /^(?:i|we) (?:didnt|havent|did not|have not)(?: do it| do that| done it| done that)?$/;

/** "I said by the bunk and that's where the kids slept, but": only leads up to what it was. */
const SAID_WRONG = /^i (?:said|wrote|told you|put) (?!.*\b(?:not|but|meant|mean)\b)\S+ \S+/;

/** What a stretch puts right; `announced` is how plainly the stretches before it did. */
export const partOf = (piece: Piece, moment: Moment, announced: Strength): Part | undefined => {
  const { strength: announcedOwn, removes, body: whole } = opened(piece.words);
  const own = MEANT_AT_END.test(whole) ? "strong" : announcedOwn;
  const body = whole.replace(MEANT_AT_END, "");
  const strength = own === "none" ? announced : own;
  if (removes && !CONTENT.test(body))
    return { changes: [{ change: "remove" }], not: {}, target: aimedAtRemoval(body), strength: "strong" };
  if (body === "") return { changes: [], not: {}, target: null, strength };
  if (strength === "strong" && DENIED_ALL.test(body)) return single({ change: "remove" }, strength);
  if (SAID_WRONG.test(body)) return undefined;
  const phrase = phrased(body, strength);
  if (phrase !== undefined) return phrase;
  const most = doerIn(body, strength) === undefined ? MOST_WORDS[strength] : MOST_WORDS.strong;
  if (body.split(" ").length > most) return undefined;
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
  if (reworded !== undefined)
    return { changes: [reworded], not: {}, target: aim.target.by === "last" ? null : aim.target, strength };
  const loose =
    strength === "none" && aim.target.by === "topic" && aim.byPart !== true && !CONTRAST.test(body);
  if (loose) return undefined;
  if (values.changes.length === 0 && (aim.target.by === "number" || DENIES.test(body))) {
    return { changes: [], not: values.not, target: aim.target.by === "last" ? null : aim.target, strength };
  }
  const empty = values.changes.length === 0 && Object.keys(values.not).length === 0;
  if (empty || values.leftover > MOST_LEFT[strength]) return undefined;
  return { ...values, target: aim.target.by === "last" ? null : aim.target, strength };
};
