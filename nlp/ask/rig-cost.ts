import { surelyNamed } from "./surely-named.ts";

const RIG =
  "(?:(?:the|this|that|my|our|old|whole|entire|poor|dear|damn|blessed|bloody) )*(?:rig|van|caravan|trailer|camper|coach|fifth wheel|fiver|tourer|outfit|wagon|old (?:girl|bird|lady|thing|boat|crate)|tin can)";
const WHOLE = `(?:${RIG}|she|her|it all|everything)`;
const COST =
  "(?:cost(?:ed|ing|s)?|set (?:me|us)|run (?:me|us)|ran (?:me|us)|stood (?:me|us)|stung|rushed|eaten|ate|swallowed|gobbled)";
const SPENT =
  "(?:spen[dt]|sunk|sink|sank|laid out|lay out|put|poured|pour|gone|went|dropped|drop|shelled out|shell out|forked out|fork out|blown|blew|thrown|threw|plowed|ploughed|tipped|lavished)";
/** What may stand behind, so that it is no "trailer brake". */
const BEHIND =
  "(?= (?:in|for|since|this|last|so|all|over|up|altogether|to|from|back|during|because|before|after|and|what|till|until|between|by|i|we|as|with|now|lately|total|every)\\b|$)";

const OF_RIG = new RegExp(
  [
    `\\b(?:did|has|have|had|does|do|is|was|s|what|that|which) ${WHOLE} (?:actually |really |ever |already |all )*(?:end(?:ed)? up )?${COST}\\b`,
    `(?<!\\b(?:in|on|of|for|at|to|from|under|inside|behind|the|this|that|my|our|old) )\\b${RIG} (?:has |had |have )?(?:actually |really |already )*${COST} (?:me|us)\\b`,
    `\\b${SPENT} (?!(?:on|into) (?:it|that)\\b)(?:\\w+ ){0,3}?(?:on|into|in) ${WHOLE}${BEHIND}`,
  ].join("|"),
);

/** As many words around the rig may name a thing that is meant instead: "what did the awning on the van cost me in cloth". */
const AROUND = 5;

/** Whether a question of money is about the whole rig, whatever else is talked of around it: "what did she cost me last year, as the neighbour bought a boat". */
export const isCostOfRig = (words: string): boolean => {
  const found = OF_RIG.exec(words);
  if (found === null) return false;
  const before = words.slice(0, found.index).trim().split(" ").slice(-AROUND);
  const behind = words
    .slice(found.index + found[0].length)
    .trim()
    .split(" ")
    .slice(0, AROUND);
  return surelyNamed(before.join(" ")).length + surelyNamed(behind.join(" ")).length === 0;
};
