import people from "../lexicon/data/people.json" with { type: "json" };
import type { Strength } from "./pieces.ts";

const WHO = people.who.join("|");
const DID = people.verbs.join("|");
const OWNER = "(?:the|a|an|my|our|his|her|some|that|this)";
/** One to three words between "the" and the one who did it: "the mobile tire guy". */
const PERSON = `(?:${OWNER} (?:[a-z]+ ){0,3}?(?:${WHO})|the [a-z]+ (?:${WHO}))`;

const NAMED: readonly RegExp[] = [
  new RegExp(
    `^(${PERSON}) (?:${DID})(?: (?:it|that|this|them|those|both|all|most|number|everything|the (?:first|second|third|last|work|job|jobs|lot|fitting|fixing|hard part|whole))\\b.*)?$`,
  ),
  new RegExp(
    `^(?:it|that|this|those|they) (?:was|were|is|got)(?: actually| really| all)? (?:done by |by |fixed by |the work of )?(${PERSON})\\b(?:$| (?:who|that|did|done|work))`,
  ),
  new RegExp(`(?:^|\\b(?:i|we) )had (${PERSON}) (?:do|put|fix|fit|replace|change|sort|make|handle)\\b`),
  new RegExp(`\\b(?:done|fixed|made|fitted|installed|replaced|performed|put in) by (${PERSON})\\b`),
  new RegExp(`^by (${PERSON})$`),
  new RegExp(`^(?:i|we) (?:paid|got|hired|asked) (${PERSON})\\b`),
];

/** "Not me, my son in law": somebody by themselves, once it is clear that something is put right. */
const ALONE = new RegExp(`^(${PERSON})$`);

/** "No, the shop did the brakes": with an opening, the thing may be named again. */
const ANNOUNCED = new RegExp(`^(${PERSON}) (?:${DID}) `);

const MYSELF =
  /\b(?:i|we) did (?:it|that|this|that one|this one|them)(?: job)? ?(?:myself|ourselves|my self|on my own|not)\b|\b(?:i|we) did (?:the|that|this|my) [a-z]+(?: [a-z]+)? (?:myself|ourselves)\b|\b(?:it|that) was me\b|\bmy own work\b|\bdid it myself\b|\bi did that one$/;
const NOT_ME =
  /\b(?:not me|wasnt me|was not me|not us|wasnt us|(?:i|we) didnt do (?:it|that|this)|not by me|not my work|didnt do (?:it|that) myself)\b/;

const RULED_OUT = new RegExp(` (?:and )?not (?:me|us|myself|${PERSON})$`);

const INSTEAD = new RegExp(
  `^(?:no )?(?:it |that )?(?:not|wasnt|was not) ${PERSON} (?:at all )?(?:it|that) was ((?!me\\b|us\\b|the day|on |in |at |last )(?:[a-z]+ ){0,3}[a-z]+)$`,
);

/** "Not the yard, it was dave next door": who it was instead, under any name. */
export const insteadOf = (words: string): string | undefined => INSTEAD.exec(words)?.[1];

export type Doer = { readonly by: string | null } | "somebody";

/** Who did it, where the words say so (the more plainly a correction was announced, the barer they may be): null is the speaker, "somebody" anyone but the speaker. */
export const doerIn = (words: string, strength: Strength): Doer | undefined => {
  const instead = insteadOf(words);
  if (instead !== undefined) return { by: instead };
  const bare = words.replace(RULED_OUT, "");
  const ruled = bare !== words;
  const patterns = [
    ...NAMED,
    ...(strength === "none" && !ruled ? [] : [ALONE]),
    ...(strength === "strong" ? [ANNOUNCED] : []),
  ];
  const named = patterns.map((pattern) => pattern.exec(bare)?.[1]).find((who) => who !== undefined);
  if (named !== undefined) return { by: named };
  if (MYSELF.test(words)) return { by: null };
  return NOT_ME.test(words) ? "somebody" : undefined;
};
