import { anyOf } from "./pieces.ts";
import data from "./removal-words.json" with { type: "json" };

const KIN = anyOf(data.kin);
const VEHICLE = anyOf(data.vehicles);
const OTHER_SORT = anyOf(data.otherSorts);
const TOLD = "(?:that|it|this|they|those|these|which)";
const IS =
  "(?:s|re)?(?: (?:was|is|were|are))?(?: (?:all|only|really|actually|just|both))*(?: (?:on|for|from|in|at|off))?";
const NO_OTHER = `(?!${anyOf(data.noOwners)}\\b)`;

/** Says whose it is instead: "that was on the gear van", "it's my mother's", "that was Darnell's cord". */
const OTHERS: readonly RegExp[] = [
  new RegExp(
    `\\b(?:on|in|for|from|to|off|was|is|of) (?:the|a|my|our|his|her|their) ${OTHER_SORT} ${VEHICLE}\\b`,
  ),
  new RegExp(`\\b(?:my |our |his |her |their |the )?${KIN}s (?:\\w+ )?${VEHICLE}\\b`),
  new RegExp(
    `^(?:${TOLD}|(?:the|that|this) (?:\\w+ )?\\w+)${IS} (?:my|our|his|her|their|the) (?:\\w+ )?${KIN}s$`,
  ),
  new RegExp(`^(?:${TOLD}${IS}|on|from|for) ${NO_OTHER}[a-z]{3,}s (?:\\w+ )?${VEHICLE}\\b`),
];

/** "That cord part, that was Darnell's cord": the thing itself, with another's name. */
export const isOthers = (words: string, thing: string): boolean => {
  const last = thing.split(" ").at(-1) ?? "";
  const named = new RegExp(`^${TOLD}${IS} (?:my |our |his |her )?${NO_OTHER}[a-z]{3,}s ${last}s?\\b`);
  return OTHERS.some((each) => each.test(words)) || (last !== "" && named.test(words));
};

/** "I bought it off my neighbour", "that was my dad's old drill": how it was come by is no reason. */
const COME_BY = new RegExp(
  `\\b(?:bought|borrowed|lent|loaned|gave|given|used)\\b.*\\b${KIN}s?\\b|\\b${KIN}s?\\b.*\\b(?:lent|loaned|gave|sold)\\b`,
);

export const isComeBy = (words: string): boolean => COME_BY.test(words);
