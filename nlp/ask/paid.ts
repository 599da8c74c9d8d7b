const WORKS =
  "(?:did|do|does|done|fix\\w*|mend\\w*|repair\\w*|replac\\w*|install\\w*|weld\\w*|chang\\w*|charg\\w*|bill\\w*|invoic\\w*|cost|costs|took|take|takes|got|made|put|worked|has (?:done|had|got|cost|charged)|have (?:done|had|got|cost|charged)|had (?:done|charged)|ran|run|set (?:me|us)|job|jobs|work|fees?|labou?r)";

/** Whether somebody whom a question of money names is paid, and does not only ask for the sum: "what did the dealer charge", "paid to my brother". */
export const isPaid = (who: string, words: string): boolean =>
  new RegExp(
    `\\b(?:by|to|with|at|from|paid|pay|paying|gave|give|owe[ds]?) (?:the |my |our |that |this )?${who}s?\\b|\\b${who}s? (?:ever |all |really |actually )*${WORKS}\\b`,
  ).test(words);
