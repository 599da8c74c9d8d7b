import { Temporal } from "temporal-polyfill";
import { EMPTY_TOPIC, type Period, type Query, type Topic } from "../../shared/memory/query.ts";
import type { Moment } from "../../shared/reading.ts";
import { scan } from "../read/scan.ts";
import { askedIn } from "./kinds.ts";
import { periodIn } from "./period.ts";
import { plainQuestion } from "./plain-question.ts";
import { topicOf } from "./topic.ts";

const LEAD =
  /^(?:and|or|what about|how about|how bout|what of|same for|same question for|just|ok and|okay and|so and|now|then|but)\b/;
/** A verb makes it a statement or a question of its own. */
const VERB =
  /\b(?:is|are|was|were|am|be|has|have|had|got|went|came|did|do|does|need|needs|gotta|put|i|we|he|she|they|its|im|ive|will|would|should|can|wont|isnt|keeps?|broke|towed|fixed|need)\b/;
const ALL =
  /\b(?:everything|all|altogether|total|the lot|whole|overall|all told|together|the rig|the trailer|the van|the caravan|the camper)\b/;
const MOST_WORDS = 9;

const SHIFT =
  /\b(?:the )?(year|month|week|summer|winter|spring|autumn|fall|season) (before|prior|previous|after|following)(?: (?:that|last))?\b|\b(?:the )?(previous|prior|following) (year|month|week|summer|winter|spring|autumn|fall|season)\b/;

const STEP: Readonly<Record<string, Temporal.DurationLike>> = { month: { months: 1 }, week: { weeks: 1 } };

const moved = (day: string | null, by: Temporal.Duration): string | null =>
  day === null ? null : Temporal.PlainDate.from(day).add(by).toString();

/** "And the year before": the last stretch asked about, moved. */
const shifted = (words: string, before: Period | null): Period | undefined => {
  const match = SHIFT.exec(words);
  if (match === null || before === null) return undefined;
  const step = Temporal.Duration.from(STEP[match[1] ?? match[4] ?? ""] ?? { years: 1 });
  const back = /before|prior|previous/.test(match[2] ?? match[3] ?? "");
  const by = back ? step.negated() : step;
  return { from: moved(before.from, by), to: moved(before.to, by), said: match[0] };
};

const OTHER_SIDE: Readonly<Record<string, string>> = {
  street: "curb",
  curb: "street",
  left: "right",
  right: "left",
  front: "rear",
  rear: "front",
  top: "bottom",
  bottom: "top",
};

const isBare = (topic: Topic): boolean =>
  topic.named.length +
    topic.systems.length +
    topic.where.length +
    topic.materials.length +
    topic.actions.length ===
  0;

const nextTopic = (words: string, said: Topic, before: Topic): Topic | undefined => {
  if (/\bother (?:side|end|one)\b/.test(words))
    return { ...before, where: before.where.map((place) => OTHER_SIDE[place] ?? place) };
  if (said.named.length + said.systems.length > 0) return said;
  if (ALL.test(words)) return EMPTY_TOPIC;
  return isBare(said)
    ? undefined
    : { ...before, where: said.where, materials: said.materials, actions: said.actions };
};

const withParts = (before: Query, topic: Topic | undefined, period: Period | undefined): Query => {
  const changed = topic !== undefined && "topic" in before ? { ...before, topic } : before;
  return period !== undefined && "period" in changed ? { ...changed, period } : changed;
};

/**
 * A question cut short after another: "and the year before", "what about the gutter?". The rest of it is that of the one
 * before.
 */
export const followUp = (text: string, moment: Moment, before: Query): Query | undefined => {
  const words = plainQuestion(text).replace(/ ?\?/g, "");
  const short = words.split(" ").length <= MOST_WORDS;
  const opens =
    LEAD.test(words) ||
    (text.trim().endsWith("?") && words.split(" ").length <= 5 && askedIn(words) === undefined);
  if (!short || !opens || VERB.test(words) || scan(text, moment).faults.length > 0) return undefined;
  const timed = periodIn(words, moment);
  const period = shifted(words, "period" in before ? before.period : null) ?? timed.period ?? undefined;
  const said = topicOf(timed.rest.replace(LEAD, "").replace(SHIFT, ""));
  const topic = "topic" in before ? nextTopic(words, said, before.topic) : undefined;
  return period === undefined && topic === undefined ? undefined : withParts(before, topic, period);
};
