const BESIDE_IT =
  /[\s,]+(?:and |but )?(?:(?:not|or) (?:only|just|merely|simply)|or (?:did|have|has|was|were|am|is) (?:i|we|he|she|they|it|that) (?:only|just|merely|simply|dream\w*|imagin\w*|ma[dk]e\w* (?:it|that) up))\b.*$/;

/** "Were the shoes ever changed, not only adjusted", "or did I only mean to": what is not asked about left out. */
export const withoutContrast = (words: string): string => words.replace(BESIDE_IT, "");

const LEFT_OUT =
  /(?<=\w{3}.{8,})[\s,]+(?:and |but |so )?(?:(?:leave|leaving|keep|keeping) (?:\w+ ){1,5}out(?: of (?:it|this|that))?|(?:not|never|dont|without) count(?:ing)? (?:\w+ ?){1,5}|(?:never mind|forget|ignore|ignoring|except|excepting|except for|apart from) (?:the|my|our|that|those) (?:\w+ ?){1,4})$/;

/** "What has the street side cost me, leave the curb side out of it": what is not to be counted, taken away. */
export const withoutLeftOut = (words: string): string => words.replace(LEFT_OUT, "");
