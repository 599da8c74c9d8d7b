const WORKS =
  "(?:did|do|does|done|fix\\w*|mend\\w*|repair\\w*|replac\\w*|install\\w*|weld\\w*|chang\\w*|charg\\w*|bill\\w*|invoic\\w*|cost|costs|took|take|takes|put|worked|run|ran|set (?:me|us)|job|jobs|work|fees?|labou?r)";
const WANTS =
  "(?:asks?|asked|asking|wants?|wanted|needs?|keeps|says?|said|saying|thinks?|thought|reckons?|bets?|swears?|wonders?|is|are|s|gets|does|looks?|insists?|claims?|tells?|told|and i)";

/**
 * Whether somebody whom a question of money names only wants to know, and is not paid: "my husband is looking at a new one
 * so what has she cost".
 */
export const onlyWantsToKnow = (who: string, words: string): boolean => {
  const paid = new RegExp(
    `\\b(?:by|paid|pay|paying|gave|give|owe[ds]?|hand(?:ed)?) (?:to )?(?:the |my |our |that |this )?${who}s?\\b|\\b${who}s? (?:ever |all |really |actually )*${WORKS}\\b`,
  );
  return !paid.test(words) && new RegExp(`\\b${who}s?(?: in law)? ${WANTS}\\b`).test(words);
};
