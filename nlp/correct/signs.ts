import { tellsReturn } from "../../shared/memory/work.ts";
import type { Moment } from "../../shared/reading.ts";
import { topicOf } from "../ask/topic.ts";
import { scan } from "../read/scan.ts";
import { doerIn } from "./person.ts";
import type { Strength } from "./pieces.ts";
import { shiftIn } from "./shift.ts";

/** Without a plain opening, only these begin a correction: "that was last Tuesday", "number two was ...", "the shop did it". */
export const LEAD =
  /^(?:(?:it|that|this|they|those) (?:was|is|were|wasnt|isnt|should|cost|came)|its|thats|not|(?:number|no|nr) (?:\d|one|two|three|four|five|six) (?:was|is|were|isnt|wasnt|should|cost)|(?:the )?(?:first|second|third|last) one (?:was|is|wasnt|isnt|cost|should)|the (?:cost|price|total|date|bill|place|material|stuff|goo|product|adhesive|paint|oil|cleaner|filler|sealant|glue|tape|grease) (?:was|is|should|came|wasnt|isnt)|(?:the|my|our) (?:[a-z]+ ){1,3}did (?:it|that|this|them|those|number)|(?:i|we) (?:only |actually |just )?(?:used|meant|paid)|(?:date|cost|price|place|material|total|amount)s? (?:should|is|was|to)|(?:i|we) (?:only |just |really |actually )?[a-z]+ (?:it|that|them)\b|(?:wasnt|not) (?:me|us)\b|all (?:i|we) did was|(?:both|they all|all|all of (?:those|them|these)|everything) (?:was|were)\b|(?:used|with|some) |didnt [a-z]+ (?:it|that)\b|[a-z]+ed (?:it|that|them)$|(?:the )?(?:bill|receipt|invoice|tax|total) (?:came|was|says|said|made|is|shows)\b|(?:it )?(?:turned out|ended up|worked out))/;
export const CONTRAST =
  /^\S+(?: \S+){0,5} (?:(?<!\b(?:would|will|could|can|do|does|did|is|are|was|were|has|have|had|should|must|might|may) )not(?! \w+ing\b)|instead of|rather than) \S+(?: \S+){0,4}$/;
/** Work on a named thing by the speaker is a note of its own. */
const WORKED = /^(?:also )?(?:i|we) (?:also |then |just |even )?(?!meant|mean|used|said|paid)/;

export const tellsWork = (body: string): boolean => {
  if (!WORKED.test(body)) return false;
  const { named, actions } = topicOf(body);
  return actions.length > 0 && (named[0]?.sure ?? 0) >= 0.6;
};

export const hasDeed = (body: string): boolean => topicOf(body).actions.length > 0;

/** "The day before", with next to nothing else. */
const isShift = (body: string): boolean => body.split(" ").length <= 6 && shiftIn(body) !== undefined;

export const begins = (body: string, strength: Strength, hasDeed: boolean): boolean => {
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

/** "The water heater": a name, not news of it. */
const isBareThing = (body: string): boolean => {
  if (/^(?:the|a|an|my|our) \S+(?: \S+)?$/.test(body)) return true;
  const name =
    /^(?:(?:it|that|this) (?:was|is)|its|thats) (?:the |a |an |my |our )?(.+?)(?: after all| really| actually| instead)?$/.exec(
      body,
    )?.[1];
  if (name === undefined || name.split(" ").length > 3) return false;
  const { named, words, actions } = topicOf(name);
  return (named[0]?.sure ?? 0) >= 0.9 && words.length + actions.length === 0;
};

/** What a thing wants is news of it. */
const NEEDS = /^(?:the |my |our |that )?\w+(?: \w+){0,2} (?:needs?|wants?|could do with|is due)\b/;

/** "The tape didn't hold": how something does is news, not a correction. */
export const narrates = (text: string, body: string, moment: Moment): boolean => {
  if (NEEDS.test(body)) return true;
  if (isBareThing(body) || CONTRAST.test(body) || doerIn(body, "strong") !== undefined) return false;
  const { verdicts, faults, times, amounts } = scan(text, moment);
  const told = verdicts.filter((verdict) => verdict.value.outcome !== "untested").length + faults.length;
  return tellsReturn(body) || (told > 0 && times.length + amounts.length === 0);
};

/** "Scratch that I flushed the fresh tank": what follows says what it was. */
export const CONTENT = /^(?:i|we|it|that|its|thats|should|make|this) (?!one\b|last\b)\S+ \S+/;

/** "The first one wasn't today": denies only, and leads up to what it was. */
export const DENIES = /^(?:\S+ ){0,4}?(?:wasnt|isnt|werent|didnt|not) /;

/** What the last words show to be put right: "the gray tank I mean". */
export const MEANT_AT_END =
  / (?:i mean|i meant|sorry|is what i meant|i should say|i should have said|come to think (?:of|about) it|now (?:that )?i think (?:of|about) it|thinking (?:of|about) it|on reflection|on second thoughts?|if i remember (?:it )?right(?:ly)?|looking at it again)$/;
