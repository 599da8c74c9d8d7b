import type { Attempt } from "../../shared/memory/query.ts";
import { deedsIn } from "./deeds.ts";

/** Which of several tries a question means, and the words of it without that. */
export type AttemptSaid = { readonly attempt: Attempt; readonly rest: string };

const NTH: readonly string[] = [
  "",
  "first|1st",
  "second|2nd|other",
  "third|3rd",
  "fourth|4th",
  "fifth|5th",
  "sixth|6th",
];
const TRY = "(?:go|goes|try|attempt|shot|bash|crack|stab|effort|round|whack)";
const MENDING = "(?:fix|repair|patch|mend|bead|bodge|lot)";
const WENT_AT =
  "(?:time|one) (?:that )?(?:i|we|he|she|they) (?:went at|had a go|tried|fixed|mended|repaired|patched|worked on|did|tackled|had at|attacked)";
const SAID_NTH = NTH.map(
  (nth) =>
    new RegExp(
      `\\b(?:the|that|my|our|his|her|their|on|this) (?:${nth}) (?:${TRY}\\b|${MENDING}\\b|${WENT_AT}\\b|time (?:a?round)\\b)`,
    ),
);

/** "The one before the welding", and where no work is named, the one before the newest: "the go before that". */
const BEFORE = new RegExp(
  `\\b(?:(?:the|that|my|our|his) )?(?:${TRY}|${MENDING}|one|time) (?:just |right |i did |we did )?before (?:the |that |i |we |he |she |they |it was |my |our |his )?(\\w+(?: \\w+)?)`,
);
const BEFORE_THIS = /^(?:last|this|it|that|one|now)$/;
/** "Before the welding" beside a number tells no more than the number. */
const BEFORE_WORK = /\b(?:before|after) (?:the |i |we |he |it was |my |our )?(\w+)\b/;

const workIn = (words: string) => deedsIn(words.split(" ")).flatMap(({ actions }) => actions.slice(0, 1));

const withoutWork = (words: string): string =>
  words.replace(BEFORE_WORK, (phrase, word: string) =>
    workIn(`the ${word}ing`).length + workIn(`we ${word}`).length > 0 ? " " : phrase,
  );

/** "What did I fix it with the second time" */
const AT_THE_END = NTH.map(
  (nth) => new RegExp(`(?<=^(?:and |so |but )*(?:what|which|who|how)\\b.*)\\bthe (?:${nth}) time$`),
);

const nthIn = (words: string): AttemptSaid | undefined => {
  const all = [...SAID_NTH.entries(), ...AT_THE_END.entries()];
  const [nth = 0, pattern] = all.find(([at, each]) => at > 1 && each.test(words)) ?? [];
  if (pattern === undefined) return undefined;
  return { attempt: { nth }, rest: withoutWork(words.replace(pattern, " ")) };
};

const beforeIn = (words: string): AttemptSaid | undefined => {
  const match = BEFORE.exec(words);
  const [first = "", second = ""] = (match?.[1] ?? "").split(" ");
  if (match === null) return undefined;
  const rest = words.replace(match[0], " ");
  const before = workIn(`we ${first} ${second}`);
  if (before.length > 0) return { attempt: { before }, rest };
  return BEFORE_THIS.test(first) || /\bbefore that$/.test(match[0])
    ? { attempt: { before: [] }, rest }
    : undefined;
};

/** "That second time I went at it", "the third go", "the one before the welding". The first of all is a matter of order. */
export const attemptIn = (words: string): AttemptSaid | undefined => nthIn(words) ?? beforeIn(words);
