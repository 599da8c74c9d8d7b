import { Temporal } from "temporal-polyfill";
import { daySpan } from "../../shared/edtf.ts";
import { EMPTY_TOPIC, type Period, type Query, type Topic } from "../../shared/memory/query.ts";
import type { Hemisphere, Moment } from "../../shared/reading.ts";
import { scan } from "../read/scan.ts";
import { SEASONS } from "../time/lexicon.ts";
import { askedIn } from "./kinds.ts";
import { periodIn, tellsEver } from "./period.ts";
import { plainQuestion } from "./plain-question.ts";
import { topicOf } from "./topic.ts";
import { inThatYear } from "./year-before.ts";

const LEAD =
  /^(?:and|n|an(?= (?:19|20)\d\d\b)|or|what about|how about|how bout|what of|same for|same question for|just|ok and|okay and|so and|now|then|but)\b/;
/** A verb makes it a statement or a question of its own. */
const VERB =
  /\b(?:is|are|was|were|am|be|has|have|had|got|went|came|did|do|does|need|needs|gotta|put|i|we|he|she|they|its|im|ive|will|would|should|can|wont|isnt|keeps?|broke|towed|fixed|need)\b/;
const ALL =
  /\b(?:everything|all|altogether|total|the lot|whole|overall|all told|together|the rig|the trailer|the van|the caravan|the camper)\b/;
/** Asks for something by itself: "work, summer 2023?" */
const OWN = /^(?:all |any |the )?(?:work|jobs?|repairs?|fixes|costs?|total|spend|money|history|everything)\b/;
const MOST_WORDS = 9;

const SHIFT =
  /\b(?:the )?(year|month|week|summer|winter|spring|autumn|fall|season) (before|prior|previous|after|following)(?: (?:that|last))?\b|\b(?:the )?(previous|prior|following) (year|month|week|summer|winter|spring|autumn|fall|season)\b/;

const STEP: Readonly<Record<string, Temporal.DurationLike>> = { month: { months: 1 }, week: { weeks: 1 } };

const moved = (day: string | null, by: Temporal.Duration): string | null =>
  day === null ? null : Temporal.PlainDate.from(day).add(by).toString();

/** "The winter that followed", "the summer before that": another season than the one asked about. */
const NEIGHBOUR =
  /\b(?:the )?(?:next |following |previous )?(spring|summer|autumn|fall|winter)(?: (that followed|that came after|after that|after it|after|afterwards|following|before that|before it|before|that came before|previous))?\b/;

const neighbouring = (words: string, before: Period | null, hemisphere: Hemisphere): Period | undefined => {
  const match = NEIGHBOUR.exec(words);
  const code = SEASONS.get(match?.[1] ?? "");
  const side = /before|previous/.test(match?.[0] ?? "") ? "before" : "after";
  if (match === null || code === undefined || before?.from == null || before.to === null) return undefined;
  if (match[2] === undefined && !/^(?:the )?(?:next|following|previous)/.test(match[0])) return undefined;
  const { from, to } = { from: before.from, to: before.to };
  const year = Number(from.slice(0, 4));
  const spans = [-2, -1, 0, 1, 2].flatMap((step) => daySpan(`${year + step}-${code}`, hemisphere) ?? []);
  const span =
    side === "after"
      ? spans.find((each) => each.from.toString() >= to)
      : spans.findLast((each) => each.to.toString() <= from);
  return span === undefined
    ? undefined
    : { from: span.from.toString(), to: span.to.toString(), said: match[0] };
};

/** "And the year before": cut short, whatever else it may seem to ask. */
export const asksOfAnotherTime = (text: string): boolean => SHIFT.test(plainQuestion(text));

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

/** "And the stitching": a word or two that may stand in a note about the same thing. */
const FEW = 3;

const nextTopic = (words: string, said: Topic, before: Topic): Topic | undefined => {
  if (/\bother (?:side|end|one)\b/.test(words))
    return { ...before, where: before.where.map((place) => OTHER_SIDE[place] ?? place) };
  if (said.named.length + said.systems.length > 0) return said;
  if (said.who !== null) return { ...before, who: said.who };
  if (ALL.test(words)) return EMPTY_TOPIC;
  if (
    isBare(said) &&
    said.words.length > 0 &&
    words.split(" ").length <= FEW &&
    /^(?:and|what about)\b/.test(words)
  )
    return { ...before, words: said.words, all: [...before.all, ...said.words], materials: [], actions: [] };
  return isBare(said)
    ? undefined
    : { ...before, where: said.where, materials: said.materials, actions: said.actions };
};

const withParts = (before: Query, topic: Topic | undefined, period: Period | null | undefined): Query => {
  const about = topic !== undefined && "topic" in before ? { ...before, topic } : before;
  const changed: Query = about.ask === "holding" ? { ...about, order: "newest" } : about;
  return period !== undefined && "period" in changed ? { ...changed, period } : changed;
};

/**
 * A question cut short after another: "and the year before", "what about the gutter?". The rest of it is that of the one
 * before.
 */
export const followUp = (text: string, moment: Moment, before: Query): Query | undefined => {
  const words = plainQuestion(text)
    .replace(/ ?\?/g, "")
    .replace(/ (?:on its own|by itself|all by itself|alone)$/, "");
  const short = words.split(" ").length <= MOST_WORDS;
  const opens =
    LEAD.test(words) ||
    (text.trim().endsWith("?") &&
      words.split(" ").length <= 5 &&
      askedIn(words) === undefined &&
      !OWN.test(words));
  if (!short || !opens || VERB.test(words) || scan(text, moment).faults.length > 0) return undefined;
  const timed = periodIn(inThatYear(words, { question: before, fresh: true }), moment);
  const asked = "period" in before ? before.period : null;
  const next = neighbouring(words, asked, moment.hemisphere);
  const period = next ?? shifted(words, asked) ?? timed.period ?? (tellsEver(words) ? null : undefined);
  const said = topicOf(
    (next === undefined ? timed.rest : words.replace(NEIGHBOUR, "")).replace(LEAD, "").replace(SHIFT, ""),
  );
  const topic = "topic" in before ? nextTopic(words, said, before.topic) : undefined;
  return period === undefined && topic === undefined ? undefined : withParts(before, topic, period);
};
