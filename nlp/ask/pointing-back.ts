import type { Topic } from "../../shared/memory/query.ts";
import type { Asked } from "./asked.ts";
import { OF_ALL_FOR_SURE } from "./of-all.ts";
import type { Timed } from "./period.ts";
import type { Before, Question } from "./question.ts";

export const isBare = (topic: Topic): boolean => topic.named.length + topic.systems.length === 0;

const POINTS_BACK =
  /\b(?:it|its|(?<!\b(?:everything|all|anything|whatever|stuff|things|jobs|work|money) )that|them|they|those|these|(?<!\bwhich )one|there(?! (?:is|are|was|were|a|any|been)\b)|this(?! (?:thing|rig|trailer|camper|caravan|van|old|year|month|week|one here)\b))\b/;
/** Questions about the whole rig, whatever was asked before. */
const ABOUT_ALL: ReadonlySet<string> = new Set(["open", "buy", "use", "worst", "ready"]);

/** Money and lists of the whole rig: "of all the jobs", "what did we drop on the van". */
const WHOLE_RIG =
  /\b(?:all (?:of )?(?:the|my|our|these|those) (?:\w+ )?(?:jobs?|work|repairs?|fixes|things|bills)|everything|(?:the|this|my|our|that) (?:whole )?(?:rig|trailer|van|caravan|camper)|grand total|overall)\b/;

/** "All up", "so far": a sum of everything, unless it is said what the money went into. */
const IN_ALL =
  /\b(?:altogether|all together|in total|total|all up|all in|all told|in all|so far|to date|since (?:i|we)|this year|last year|over (?:the )?\w+|in \d{4})\b/;
const INTO_IT =
  /\b(?:on|for|into|in|with|to|about) (?:it|that|them|those|these|that one)\b|\b(?:has|have|did|does|is) (?:it|that|they|those|these) (?:all )?(?:cost|costed|come|came|set|run|ran|eaten|swallowed|taken)\b/;

const isSumOfAll = (words: string): boolean => IN_ALL.test(words) && !INTO_IT.test(words);

/** Whether a question is about the whole rig, whatever was asked or told before: money and lists of a time mostly are. */
export const asksOfAll = (
  asked: Asked,
  ofAll: number,
  words: string,
  timed: Timed,
  before: Before,
): boolean => {
  if (ABOUT_ALL.has(asked.kind)) return true;
  if (asked.kind !== "cost" && asked.kind !== "list") return false;
  if (timed.period !== null) return true;
  if (ofAll > OF_ALL_FOR_SURE && !INTO_IT.test(words)) return true;
  return !before.fresh || WHOLE_RIG.test(words) || (asked.kind === "cost" && isSumOfAll(words));
};

/** Less sure than this, a word may tell of trouble with what was asked about: "how often did it leak". */
const NAMED_ENOUGH = 0.65;
const SUBJECT = /\b(?:it|they|them|that one|those(?! (?!is|are|were|did|do|have|had|still|ever|hold)\w))\b/;

/** "How much of that was plumbing": of the time asked about before. */
export const sameTime = (words: string, timed: Timed, before: Question | null): Timed => {
  const asked = before !== null && "period" in before ? before.period : null;
  return timed.period === null &&
    asked !== null &&
    /\b(?:of|out of|from) (?:that|it|those|them|which)\b/.test(words)
    ? { ...timed, period: asked }
    : timed;
};

export const topicBefore = (asked: Question | null): Topic | undefined =>
  asked !== null && "topic" in asked && !isBare(asked.topic) ? asked.topic : undefined;

/** "What did I use", "who did it last", right after another question: nothing is named at all. */
const isCutShort = (topic: Topic, words: string): boolean =>
  isBare(topic) &&
  topic.words.length + topic.materials.length + topic.where.length === 0 &&
  words.split(" ").length <= 6 &&
  /^(?:and |n |so |but )*(?:(?:who|whom|done) by|by whom|by who|who with|with whom|(?:(?:what |the |at what |for what )?(?:price|cost)|for how much|how much|since when|when|where|the damage|(?:on |at )?(?:what|which) (?:day|date|month|year|stuff|product|material))$|how much (?:did (?:he|she|they) (?:charge|want|ask|take)|was (?:that|it))|what did (?:he|she|they) (?:charge|want|ask|take)|what (?:did|have) (?:i|we) (?:use|used|put on|put in|pay|paid)|when was that|who did|who was|why|how often|how many times|how long ago|how long did|where was|with what|what with)\b/.test(
    words,
  );

/** A topic with the thing of another, and its place where none is said. */
const onSame = (topic: Topic, { named, systems, where }: Topic): Topic => ({
  ...topic,
  named,
  systems,
  where: topic.where.length > 0 ? topic.where : where,
});

/** "Which of the mends went longest": ways are weighed against each other on one thing, the one asked about before. */
export const weighedOn = (topic: Topic, words: string, before: Topic | undefined): Topic =>
  before === undefined || !isBare(topic) || WHOLE_RIG.test(words) ? topic : onSame(topic, before);

/** "When was it that I taped the top": an "it" that points at nothing. */
const CLEFT =
  /\b(?:when|who|what|where|which|how) (?:was|is) it(?= (?:that |who |(?!(?:last|first|ever|then|again|done|fixed|made|you|for|on|in|we|i)\b)\w+ (?:did|done|put|fixed|replaced)\b|(?:i|we|he|she|they) |(?!(?:last|first|ever|then|again|done|fixed|made)\b)\w+ed\b))/;

/** "And how many times has it come undone": the thing is that of the question before. */
export const carried = (topic: Topic, words: string, before: Topic | undefined): Topic => {
  const said = topic.materials.length + topic.words.length > 0 ? words.replace(/\bthere\b/g, " ") : words;
  if (before === undefined) return topic;
  if (!POINTS_BACK.test(said.replace(CLEFT, " ")))
    return isCutShort(topic, words) ? onSame(topic, before) : topic;
  if (isBare(topic) || ((topic.named[0]?.sure ?? 0) < NAMED_ENOUGH && SUBJECT.test(words)))
    return onSame(topic, before);
  const known = new Set(before.named.filter(({ sure }) => sure >= 0.7).map(({ component }) => component));
  const shared = topic.named.filter(({ component }) => known.has(component));
  return /\b(?:that|those|this|these)\b/.test(words) && shared.length > 0
    ? { ...topic, named: shared }
    : topic;
};
