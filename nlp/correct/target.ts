import type { Target } from "../../shared/memory/correction.ts";
import { placeOf } from "../../shared/memory/place.ts";
import { tellingStems } from "../../shared/memory/words.ts";
import { topicOf } from "../ask/topic.ts";

export type Aimed = {
  readonly target: Target;
  readonly body: string;
  /** Aimed by a part of what was told, and putting its place right. */
  readonly byPart?: true;
};

const ORDER: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  first: 1,
  second: 2,
  third: 3,
  fourth: 4,
  fifth: 5,
  "1st": 1,
  "2nd": 2,
  "3rd": 3,
  "4th": 4,
  "5th": 5,
};
const WORDS = Object.keys(ORDER).join("|");
const IS =
  "(?:was|were|is|are|wasnt|werent|isnt|should be|should have been|should say|shouldve been|cost|costs|came to|happened|got done|needs to be|ought to be|must be)";

const NUMBERED = new RegExp(
  `^(?:number |no |nr |item |entry |record |job |the )?(${WORDS}|\\d)(?: one| job| thing| record| entry| item)?(?: (?=${IS}\\b)|$)`,
);
const ABOUT = new RegExp(
  `^(?:on |for |about |with )?(?:the |my |that |our )?(.{2,60}?)(?: one| job| thing| bit| entry| note)? (${IS}) (.+)$`,
);
/** A name as sure as this may stand for a thing that is on record: "the tank". */
const NAMED = 0.55;

const PRONOUN =
  /^(?:it|that|this|he|she|they|those|these|i|we|there|what|the (?:date|cost|price|total|shop|dealer|place|day|thing|material|stuff|glue|sealant|tape))\b/;

const numbered = (body: string): Aimed | undefined => {
  const match = NUMBERED.exec(body);
  const word = match?.[1];
  if (match === null || word === undefined) return undefined;
  const number = ORDER[word] ?? Number(word);
  const isPlain =
    /^(?:\d|one|two|three|four|five|six|seven|eight|nine)\b/.test(body) && body === match[0].trim();
  if (isPlain) return undefined;
  return { target: { by: "number", numbers: [number] }, body: body.slice(match[0].length).trim() };
};

/** "The latch was in the bedroom": a part that was told of, and where it is. */
const isPartOf = (subject: string, verb: string, rest: string): boolean =>
  subject.split(" ").length <= 2 &&
  /^(?:was|were|is|are)$/.test(verb) &&
  /^(?:in|on|at|by|over|under|near|next to|behind) (?:the |my )?\w+(?: \w+)?$/.test(rest) &&
  placeOf(rest).size > 0 &&
  tellingStems(subject).size > 0;

const about = (body: string): Aimed | undefined => {
  const match = ABOUT.exec(body);
  const [, subject = "", verb = "", rest = ""] = match ?? [];
  if (match === null || PRONOUN.test(body)) return undefined;
  const topic = topicOf(subject);
  if (isPartOf(subject, verb, rest))
    return { target: { by: "topic", topic }, body: `it ${verb} ${rest}`, byPart: true };
  const isPlace = topic.named.length === 0 && topic.where.length > 0 && / one\b/.test(body);
  if ((topic.named[0]?.sure ?? 0) < NAMED && !isPlace) return undefined;
  return { target: { by: "topic", topic }, body: `it ${verb} ${rest}` };
};

/** Which record a stretch puts right, and what is left to say of it. */
export const aimed = (body: string): Aimed =>
  numbered(body) ?? about(body) ?? { target: { by: "last" }, body };

/** "Delete the bearings one", "scratch number two". */
export const aimedAtRemoval = (body: string): Target => {
  const number = numbered(body);
  if (number !== undefined) return number.target;
  const topic = topicOf(body);
  return (topic.named[0]?.sure ?? 0) >= NAMED ? { by: "topic", topic } : { by: "last" };
};
