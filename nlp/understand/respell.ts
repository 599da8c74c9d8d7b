import { plainWords } from "../../shared/memory/words.ts";
import type { Draft, Moment } from "../../shared/reading.ts";
import { type ComponentId, componentName } from "../../shared/vocabulary.ts";
import { deedsIn } from "../ask/deeds.ts";
import { type Mention, mentionsIn } from "../ask/names.ts";
import { read } from "../read/index.ts";
import { tellsAnything } from "../read/tells-anything.ts";

/** Words that stand for a thing named elsewhere. */
const POINTER =
  /(?<!\b(?:none|neither|any|some|which|each) of )\b(?:it|them|that one|this one|that thing|the thing|the same one|both of them)\b(?! (?:was|is|has|rained|rains|snow|snowed|got|took|cost|seems|looks like|turns out|turned out|s )\b)/i;

/** "The rear one" */
const ONE =
  /\b(the (?:other |(?:front|rear|back|left|right|top|bottom|upper|lower|driver'?s?|passenger|street|curb|kerb|near|off)(?: side)? ?){1,2})ones?\b/i;

/** The damage in a thing's stead: "patched the hole". */
const DAMAGE =
  /\bthe (?:hole|holes|crack|cracks|tear|rip|split|leak|gap|dent|gash|puncture|break|damage|spot|bad bit|loose (?:bit|end|edge)|edge|end|old one|old stuff)\b/i;

const repairs = (text: string, moment: Moment): readonly Draft[] =>
  read(text, moment).records.filter(({ fields }) => fields.kind === "repair");

const surely = ({ named }: Mention): ComponentId | undefined =>
  named.find(({ sure }) => sure >= 0.65)?.component;

const onlyThing = (words: readonly string[]): Mention | undefined => {
  const mentions = mentionsIn(words).filter((mention) => surely(mention) !== undefined);
  return mentions.length === 1 ? mentions[0] : undefined;
};

const named = (text: string, pattern: RegExp, component: ComponentId): string =>
  text.replace(pattern, `the ${componentName(component)}`);

const patternOf = (words: readonly string[]): RegExp =>
  new RegExp(`\\b${words.join("\\W+")}(?:s|es)?\\b`, "i");

/** Every way of saying a text's own thing where it only points to it, or calls it by an everyday name. */
const ownSpellings = (text: string): readonly string[] => {
  const words = plainWords(text);
  const thing = onlyThing(words);
  const component = thing && surely(thing);
  if (thing === undefined || component === undefined) return [];
  const called = patternOf(words.slice(thing.from, thing.to));
  return [
    named(text, POINTER, component),
    named(text, DAMAGE, component),
    text.replace(called, componentName(component)),
  ];
};

const tellsDeed = (text: string): boolean =>
  deedsIn(plainWords(text)).length > 0 || /\b(?:did|done|redid|sorted) (?:it|them)\b/i.test(text);

const workFound = (text: string, moment: Moment): string | null => {
  if (!tellsDeed(text) || repairs(text, moment).length > 0) return null;
  return (
    ownSpellings(text).find((spelled) => spelled !== text && repairs(spelled, moment).length > 0) ?? null
  );
};

const pointedOut = (text: string, thing: ComponentId | null, moment: Moment): string | null => {
  if (thing === null || onlyThing(plainWords(text)) !== undefined || tellsAnything(text, moment)) return null;
  const spelled = [text.replace(ONE, `$1${componentName(thing)}`), named(text, POINTER, thing)];
  return spelled.find((each) => each !== text && tellsAnything(each, moment)) ?? null;
};

/** "Ran new wire to it": the work is on what was spoken of before, whatever went in. */
const REACHED =
  /\b((?:to|on|onto|in|into|for|around|round|over|under|behind|across|through) )(?:it|them|that one|this one)\b/i;

/** Whether a thing is named but for what goes to, on or into "it". */
const namesMore = (text: string, pointerAt: number): boolean => {
  const words = plainWords(text);
  const put = plainWords(text.slice(0, pointerAt)).length;
  return mentionsIn(words).some((mention) => surely(mention) !== undefined && mention.to !== put);
};

const reached = (text: string, thing: ComponentId | null, moment: Moment): string | null => {
  const at = REACHED.exec(text)?.index;
  if (thing === null || at === undefined || namesMore(text, at)) return null;
  if (!tellsDeed(text) && repairs(text, moment).length === 0) return null;
  const spelled = text.replace(REACHED, `$1the ${componentName(thing)}`);
  const drafts = repairs(spelled, moment);
  return drafts.length > 0 && drafts.every(({ fields }) => fields.component === thing) ? spelled : null;
};

/**
 * The text as the reader reads more of it: its thing said where it only points. `thing` is
 * what the note before was about. Null when the words do as they are.
 */
export const respelled = (text: string, thing: ComponentId | null, moment: Moment): string | null => {
  return reached(text, thing, moment) ?? workFound(text, moment) ?? pointedOut(text, thing, moment);
};
