import type { Meant } from "./lately.ts";

/** How surely the one record is meant. */
const SURELY = 0.9;

/** "Btw those new tires were 421": a thing, and what it came to. */
const RESTATES =
  /^\W*(?:(?:btw|by the way|oh|and|also|so|well|just|fyi|actually|turns out|looks like)\W+)*(?:the|that|those|these|my|our) (?:[a-z'-]+ ){1,4}?(?:(?:that |which )?(?:i|we) (?:put|fitted|got|had|bought|did|changed)(?: [a-z'-]+){0,6}? )?(?:was|were|cost|costed|came (?:to|out at|in at)|ran (?:me|us)|set (?:me|us) back)(?: (?:really|actually|only|all in))? [$£€]?\s?\d+(?:[.,]\d\d)?(?: ?(?:bucks|dollars|quid|pounds|euros?|rand))?(?:,? (?:(?:with|including|after|before) (?:the )?(?:tax|taxes|vat|gst|delivery|shipping|postage|fitting|labou?r)|all in|all told|in the end|delivered|not \S+))?\W*$/i;

/** The sum that a message tells again of work whose sum is on record already; no sum of new work. */
export const sumRestated = (text: string, { shown, sure, offers }: Meant): number | undefined => {
  const { kind, cost } = shown.fields;
  if (kind !== "repair" || cost === null || sure < SURELY || !RESTATES.test(text)) return undefined;
  const sums = new Set(
    offers.flatMap(({ field, is, reckoned }) => (field === "cost" && reckoned !== true ? [Number(is)] : [])),
  );
  const [sum] = sums;
  return sums.size === 1 && sum !== cost ? sum : undefined;
};
