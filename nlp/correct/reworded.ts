import { topicOf } from "../ask/topic.ts";
import { AFTERTHOUGHTS, LOOKED_UP } from "./afterthoughts.ts";
import { CONTRASTS } from "./contrasts.ts";
import { deniedThenSaid } from "./denied-then-said.ts";
import { headed } from "./headed.ts";
import { plainDays } from "./plain-days.ts";
import { removal } from "./removals.ts";
import { byRules, upTo } from "./rules.ts";
import slips from "./slips.json" with { type: "json" };

const SLIPS = new Map(Object.entries(slips).filter(([word]) => word !== "about"));

/** The words that announce a correction, spelled right. */
export const respelt = (text: string): string =>
  plainDays(text.replace(/[’`]/g, "'"))
    .replace(/[a-z']+/gi, (word) => SLIPS.get(word.toLowerCase()) ?? word)
    .replace(/\b(should|could|must) of\b/gi, "$1 have");

/** Openings that a form of words may stand behind. */
const OPENED =
  /^(?:(?:oops|whoops|sorry|no(?! (?:idea|clue|memory|record|note|leaks?|drips?|sign|problems?|trouble|more|longer|new))|nope|nah|naw|ah|on reflection|thinking about it|oh|wait|hang on|hold on|actually|ok|okay|well|right|hmm|um|er|ach|och|aye|argh|ugh|damn|bugger|blimey|my mistake|my bad)\b[\s,.:;!–—-]+)+/i;

/** Said on the way, and no part of what is put right. */
const BY_THE_WAY =
  /,? \b(?:btw|by the way|mind you|mind|come to think of it|fyi|for the record|i tell a lie)\b(?=,? |[.;])/gi;

/** "She's got hold of the wrong tube. Butyl mastic, like I said": each statement by itself. */
const statements = (text: string): readonly string[] => {
  const all = text.split(/(?<=[.!;])\s+/).filter((each) => each !== "");
  return all.length > 1 ? all : [];
};

const SWAP = new RegExp(
  `^(?:please )?(?:change|swap) (?:the )?(${upTo(3)}) to (?:the )?(${upTo(3)})(?: please)?[.!]?$`,
  "i",
);

const isStuff = (words: string): boolean => {
  const { materials, named } = topicOf(words);
  return materials.length > 0 && (named[0]?.sure ?? 0) < 0.7;
};

/** "Change butyl tape to lap sealant": stuff for other stuff. */
const swapped = (text: string): string | undefined => {
  const [, had = "", to = ""] = SWAP.exec(text) ?? [];
  return isStuff(had) && isStuff(to) ? `no, it was ${to} not ${had}` : undefined;
};

const MOST_WORDS = 26;

/**
 * A correction or a removal in one of the forms that `correct` takes apart best ("no, it was B not A", "no, 54", "delete the
 * bearing one"); undefined where the words have none of the many forms for it.
 */
export const reworded = (text: string): string | undefined => {
  const spelt = respelt(text).trim();
  const taken = removal(spelt);
  if (taken !== undefined) return taken;
  if (spelt.split(/\s+/).length > MOST_WORDS) return undefined;
  const short = spelt.replace(BY_THE_WAY, "");
  for (const body of new Set([short, short.replace(OPENED, ""), spelt, spelt.replace(OPENED, "")])) {
    const plainer =
      deniedThenSaid(body) ??
      byRules(body, CONTRASTS) ??
      byRules(body, AFTERTHOUGHTS) ??
      byRules(body, LOOKED_UP) ??
      headed(body) ??
      swapped(body);
    if (plainer !== undefined) return plainer;
  }
  return statements(short)
    .map((each) => byRules(each.replace(OPENED, ""), AFTERTHOUGHTS))
    .find((plainer) => plainer !== undefined);
};
