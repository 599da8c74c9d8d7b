import { unwrap } from "./plain-question.ts";
import { topicOf } from "./topic.ts";

/** What a cut-short question asks for: "money spent since April", "remaining jobs". */
const FRAGMENT =
  /^(?:(?:the|all|any|every|my|our|total|remaining|open|outstanding|current|pending|further|other|full|whole|entire|recent) )*(?:money|cash|spend|spending|costs?|expenses?|outlay|bills?|total|tally|damage|jobs|repairs|fixes|work|maintenance|faults|failures|todos|history|log|timeline|everything|purchases|nights|miles|mileage|distance|odometer|shopping list|to do list)\b/;
const STATES =
  /\b(?:i|we|it|he|she|they|its|im|is|are|was|were|looks?|seems?|works?|went|came|goes|got|needs?|working|fine|good|ok|okay|holding|dry|tight|well|finished|complete|over|now|here|today|ready|loaded|packed|back|sorted)\b/;
const ASIDE_FROM_TIME =
  /\b(?:so far|for|on|in|to|with|from|of|about|by|left|ahead|spent|done|ever|please|list)\b/;
const FEW_WORDS = 8;

/** Whether a few plain words ask without a verb: "money spent since April", "remaining jobs". */
export const asksInPart = (words: string): boolean =>
  words.split(" ").length <= FEW_WORDS &&
  FRAGMENT.test(words) &&
  !STATES.test(words) &&
  (ASIDE_FROM_TIME.test(words) ||
    /^(?:remaining|outstanding|open|pending|everything|shopping list|to do list|tally|total)\b/.test(words));

/** A clause that is all question: "last job", "failures", "everything that got done". */
const ALL_ASKING =
  /^(?:(?:the|all|any|every|my|our|total|remaining|open|outstanding|full|whole|entire|just|only|and) )*(?:(?:last|latest|most recent|previous|first|earliest|newest) )?(?:(?:jobs?|work|repairs?|fix(?:es)?|services?|servicing|maintenance|failures|breakdowns|costs?|spend|spending|outlay|tally|bills?|history|story|status|state|condition|date|dates|faults|problems|todos?|items|list|money|sums?|times?|summary|rundown|recap|record|log|materials?|total(?: cost| spend)?)(?: (?:done|made|so far|to date|logged|on record|recorded|spent|involved|altogether|all told|used|carried out|finished|completed|left|please|pls))*|(?:everything|anything|all|whatever) (?:that )?(?:(?:i|we|ive|weve|id) (?:\w+ )?(?:did|done|fixed|mended|repaired|changed|replaced|spent|paid|bought|worked on)|(?:got|was|has been|had been|has got|gotten|been|were) (?:\w+ )?(?:done|fixed|mended|repaired|changed|replaced|worked on|seen to|sorted)|done))$/;
/** Whether these words are all question: "last job". */
export const isAllAsking = (text: string): boolean => ALL_ASKING.test(unwrap(text).words);

const FILLING = /^(?:please|thanks|cheers|mate|buddy|ta|thank you)$/;
const MOST_IN_CLAUSE = 5;
const MOST_LETTERS = 90;
/** Who did it, how it is and how it came out: these tell. */
const HOW_IT_IS =
  /\b(?:i|we|it|he|she|they|its|im|is|are|was|were|looks?|seems?|works?|went|came|goes|got|needs?|working|fine|good|ok|okay|holding|dry|tight|well|finished|complete|loaded|packed|sorted)\b/;

const namesOnly = (clause: string): boolean =>
  clause.split(" ").length <= MOST_IN_CLAUSE &&
  !HOW_IT_IS.test(clause) &&
  topicOf(clause).actions.length === 0;

const MARKS = /[,:;.!?]+|\s-+\s/;

/**
 * "Rear axle, last job", "Jobs, spring of 22": one clause asks, the others say of what; times are taken out before and
 * `timed` says that there was one. Amounts tell.
 */
export const asksInClauses = (text: string, timed: boolean): boolean => {
  if (text.length > MOST_LETTERS || /\d/.test(text)) return false;
  const clauses = text
    .split(MARKS)
    .map((clause) => unwrap(clause).words)
    .filter((clause) => clause !== "" && !FILLING.test(clause));
  const others = clauses.filter((clause) => !isAllAsking(clause));
  if (clauses.length - others.length !== 1 || !others.every(namesOnly)) return false;
  return timed || others.some((clause) => topicOf(clause).named.length + topicOf(clause).systems.length > 0);
};
