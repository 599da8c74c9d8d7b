import type { Meant } from "./lately.ts";

/** How surely the one record is meant. */
const SURELY = 0.9;

/** "Btw those new tires were 421": a thing, and what it came to. */
const RESTATES =
  /^\W*(?:(?:btw|by the way|oh|and|also|so|well|just|fyi|actually|turns out|looks like)\W+)*(?:the|that|those|these|my|our) (?:[a-z'-]+ ){1,4}?(?:(?:that |which )?(?:i|we) (?:put|fitted|got|had|bought|did|changed)(?: [a-z'-]+){0,6}? )?(?:was|were|cost|costed|came (?:to|out at|in at)|ran (?:me|us)|set (?:me|us) back)(?: (?:really|actually|only|all in))? [$£€]?\s?\d+(?:[.,]\d\d)?(?: ?(?:bucks|dollars|quid|pounds|euros?|rand))?(?:,? (?:(?:with|including|after|before) (?:the )?(?:tax|taxes|vat|gst|delivery|shipping|postage|fitting|labou?r)|all in|all told|in the end|delivered|not \S+))?\W*$/i;

/** "R58 haha, typing too fast": a sum first of all and a few words more, right after the note. */
const SUM_FIRST = /^\W*(?:(?:no|sorry|oops|wait|um|er|ha)\W+)*(?:[$£€]|(?:us|a|au|nz|c|ca)\$|r)\s?\d/i;
/** "$12 for a burger": what something else came to. */
const ELSE = /\b(?:for|on|at|in|to|of|from)\b/i;
const MOST_WORDS = 8;
const MOST_MINUTES = 15;

const isJustSum = (text: string, { minutes, offers }: Meant): boolean =>
  SUM_FIRST.test(text) &&
  !ELSE.test(text) &&
  minutes !== null &&
  minutes <= MOST_MINUTES &&
  text.trim().split(/\s+/).length <= MOST_WORDS &&
  offers.every(({ field }) => field === "cost");

/** The sum that a message tells again of work whose sum is on record already; no sum of new work. */
export const sumRestated = (text: string, meant: Meant): number | undefined => {
  const { shown, sure, offers } = meant;
  const { kind, cost } = shown.fields;
  if (kind !== "repair" || cost === null) return undefined;
  if (!isJustSum(text, meant) && (sure < SURELY || !RESTATES.test(text))) return undefined;
  const sums = new Set(
    offers.flatMap(({ field, is, reckoned }) => (field === "cost" && reckoned !== true ? [Number(is)] : [])),
  );
  const [sum] = sums;
  return sums.size === 1 && sum !== cost ? sum : undefined;
};
