import type { Purpose } from "../../shared/memory/intent.ts";
import type { Scene, Showing } from "../../shared/memory/scene.ts";
import { topicOf } from "../ask/topic.ts";

type Outcome = Extract<Purpose, { is: "verdict" }>["outcome"];

/** What a short word on something shown says of it; tried in order, on plain words. */
const WORDS: readonly (readonly [Outcome, RegExp])[] = [
  [
    "later",
    /\b(?:later|not now|not yet|remind me|tomorrow|snooze|another (?:day|time)|next (?:week|month|trip|time)|in (?:a|two|three|four|\d+) (?:days?|weeks?|months?)|cant (?:look|check) now|havent looked|didnt look|have not looked|skip|busy)\b/,
  ],
  [
    "partly",
    /\b(?:partly|part way|mostly|sort of|kind of|kinda|sorta|so so|a (?:bit|little)|slight(?:ly)?|somewhat|not (?:quite|fully|entirely|perfect)|barely|half|nearly|almost|better but|(?:leak|drip|weep|squeak|rattl|flicker|wobbl|smell|stick)\w* (?:\w+ )?less|less of an? \w+)\b|\b(?:damp|weep(?:s|ing)?|seep(?:s|ing)?)\b(?! (?:\w+ ){0,4}again\b)/,
  ],
  [
    "failed",
    /\b(?:came back|come back|back again|is back|failed|failing|let go|gave (?:out|up|way)|no good|not (?:holding|good|dry|tight|working)|isnt (?:holding|good|dry|working)|doesnt (?:hold|work)|didnt (?:hold|work|last|take|stick|fix)|isnt fixed|not fixed|hasnt held|broke(?:n)?|leak(?:s|ing|ed)?|drip(?:s|ping|ped)?|came (?:off|loose|undone|apart)|fell off|peel(?:ed|ing)|crack(?:ed)? again|(?:has|have|its|theyve) (?:all )?(?:cracked|split|shrunk|shrivelled|lifted|popped|torn)|(?:water|damp|weep\w*|seep\w*|noise|noisy|squeak\w*|rattl\w*|smell\w*|flicker\w*|stuck|out|off|tripp\w*|jamm\w*|stick\w*|wobbl\w*|quit|died|stopped|fail\w*) (?:\w+ ){0,5}again|gone|dead|bad|loose|worse|still (?:leak\w*|drip\w*|wet|loose|broken|dead)|wet|bust(?:ed)?|frayed|seized|perished|rusted(?: \w+)?|burn(?:t|ed) out|blown|nope|no)\b/,
  ],
  [
    "holding",
    /\b(?:still (?:good|holding|dry|tight|ok|okay|fine|solid|going|there|working|works|sound|on)|firm|stuck (?:fast|tight|down|solid)|stayed (?:put|stuck|on|dry|up|tight|shut)|behav(?:es|ing|ed)|quiet|smooth|sweet|grand|spot on|going strong|in one piece|faultless|flawless|good|fine|holding|held|holds|did hold|does hold|dry|tight|solid|ok|okay|great|perfect|works|working|yes|yep|yeah|yup|all (?:good|well|right)|no (?:leaks?|drips?|problems?|trouble|change|issues?|play|movement|cracks?|sign)|not a drop|bone dry|rock solid|sound|intact|looks? (?:good|ok|okay|fine|great)|like new|alright|as new)\b/,
  ],
];

const NEGATED_TROUBLE =
  /\b(?:no|not a|zero|without|never|isnt|aint|hasnt|not) (?:more |sign of |signs of |any )?(?:leaks?|leaking|leaked|drips?|dripping|cracks?|cracked|drop|trouble|problems?|issues?|play|movement|worse|loose|wet|damp|weeping)\b/;

export const outcomeIn = (words: string): Outcome | undefined => {
  const rest = words.replace(DENIES, "");
  return (rest === words ? undefined : outcomeOf(rest)) ?? outcomeOf(words);
};

/** "No it holds now": what follows says more than the no. */
const DENIES =
  /^(?:no|nope|nah)(?: (?:actually|wait|well|sorry|but))* (?=(?:it|its|that|thats|they|theyre|she|shes|still|all|now)\b)/;

const outcomeOf = (words: string): Outcome | undefined => {
  if (NEGATED_TROUBLE.test(words) && !/\b(?:but|except|though)\b/.test(words)) return "holding";
  return WORDS.find(([, pattern]) => pattern.test(words))?.[0];
};

const MOST_WORDS = 12;

const idsOf = (showing: Showing | null): readonly number[] => showing?.records.map(({ id }) => id) ?? [];

const FEW_WORDS = 5;
/** How a longer answer begins. */
const ANSWERS =
  /^(?:(?:and|but|well|so|oh|ok|update) )*(?:yes|yep|yeah|yup|no|nope|nah|still|it|its|that|thats|they|looks?|looking|looked|all|just|had a look|took a look|have a look|checked|good|great|dry|tight|fine|holding|held|came|partly|mostly|same|rock|bone|not|seems|seem|solid|perfect|failed|let|gone|broke|bit|a bit|a little|kind of|sort of|leaking|dripping|later|remind|tomorrow|crawled|went|bad|unfortunately|sadly|happy)\b/;

const isNudged = (scene: Scene, component: string): boolean =>
  [scene.replyTo, scene.shown].some((showing) =>
    showing?.records.some(({ fields }) => fields.component === component),
  );

/** Work, or another thing than the one asked about, makes it a note of its own. */
const speaksOfElse = (words: string, scene: Scene): boolean => {
  const { named, actions } = topicOf(words);
  const works = actions.some((action) => action !== "inspect" && action !== "test");
  return works || named.some(({ component, sure }) => sure >= 0.9 && !isNudged(scene, component));
};

/** An answer to what the bot asked or is replied to: "still good", "came back", "later". */
export const verdictAsked = (words: string, scene: Scene): Purpose | undefined => {
  if (words.split(" ").length > MOST_WORDS || speaksOfElse(words, scene)) return undefined;
  const nudged =
    scene.pending?.is === "nudge"
      ? scene.pending.records
      : scene.replyTo?.of === "nudge"
        ? idsOf(scene.replyTo)
        : [];
  const short = words.split(" ").length <= FEW_WORDS || ANSWERS.test(words);
  const outcome = nudged.length === 0 || !short ? undefined : outcomeIn(words);
  return outcome === undefined ? undefined : { is: "verdict", outcome, records: nudged };
};

const ABOUT_IT =
  /^(?:(?:and|but|well|so|yep|yes|no|nope|update|ok|unfortunately|sadly|good news|bad news) )*(?:it|that|still|its|the (?:patch|fix|repair|tape|glue|sealant|weld|job|bead|sealing|mend)|thats|they|theyre|held|holding|no luck|that one|didnt|hasnt|wont|doesnt)\b/;

/** A word on the work just told or replied to, with no thing named: "it's still dripping". */
export const verdictOnShown = (words: string, scene: Scene): Purpose | undefined => {
  if (words.split(" ").length > MOST_WORDS || !ABOUT_IT.test(words)) return undefined;
  const [record, ...others] = (scene.replyTo ?? scene.last)?.records ?? [];
  const outcome = outcomeIn(words);
  if (record === undefined || others.length > 0 || outcome === undefined || outcome === "later")
    return undefined;
  if (record.fields.kind === "repair" || record.fields.kind === "check")
    return { is: "verdict", outcome, records: [record.id] };
  return outcome === "holding" ? { is: "tick", records: [record.id], topic: null, how: "done" } : undefined;
};
