import {
  type Attempt,
  EMPTY_TOPIC,
  type Focus,
  type Period,
  type Query,
  type Topic,
} from "../../shared/memory/query.ts";
import type { Moment } from "../../shared/reading.ts";
import type { UseUnit } from "../../shared/record.ts";
import { type AskedFor, LEARNT_TALK, type TalkJudges } from "../judges/talk.ts";
import { askSigns } from "./ask-signs.ts";
import type { Asked } from "./asked.ts";
import { attemptIn } from "./attempt-said.ts";
import { withoutContrast, withoutLeftOut } from "./contrast.ts";
import { askedIn } from "./kinds.ts";
import { asksPlainlyFor, narrowed } from "./of-all.ts";
import { periodIn, type Timed } from "./period.ts";
import { questionAlone, unwrap } from "./plain-question.ts";
import { asksOfAll, carried, isBare, sameTime, topicBefore, weighedOn } from "./pointing-back.ts";
import type { Before, Question } from "./question.ts";
import { settled } from "./thing-signs.ts";
import { topicOf } from "./topic.ts";
import { inThatYear } from "./year-before.ts";

type Sort = Asked extends infer Each ? (Each extends Asked ? Omit<Each, "rule"> : never) : never;

const ASKED: Readonly<Record<AskedFor, Sort>> = {
  "last what": { kind: "last", focus: "what" },
  "last when": { kind: "last", focus: "when" },
  "last how-long-ago": { kind: "last", focus: "how-long-ago" },
  "last materials": { kind: "last", focus: "materials" },
  "last who": { kind: "last", focus: "who" },
  "last why": { kind: "last", focus: "why" },
  "last cost": { kind: "last", focus: "cost" },
  "last state": { kind: "last", focus: "state" },
  "last place": { kind: "last", focus: "place" },
  "last cure": { kind: "last", focus: "cure" },
  list: { kind: "list" },
  ever: { kind: "ever" },
  "count failures": { kind: "count", of: "failures" },
  "count work": { kind: "count", of: "work" },
  holding: { kind: "holding" },
  open: { kind: "open" },
  buy: { kind: "buy" },
  "cost all": { kind: "cost", of: "all" },
  "cost dearest": { kind: "cost", of: "dearest" },
  longest: { kind: "longest", of: "longest" },
  "longest shortest": { kind: "longest", of: "shortest" },
  said: { kind: "said" },
  use: { kind: "use" },
  due: { kind: "due" },
  worst: { kind: "worst" },
  decide: { kind: "decide" },
  ready: { kind: "ready" },
};

const UNITS: readonly (readonly [RegExp, UseUnit])[] = [
  [/\b(?:km|kms|kilomet\w+|ks|kays|clicks|klicks)\b/, "km"],
  [/\b(?:miles?|far|distance|mileage|odometer|towing|driving|tow|drive|driven)\b/, "miles"],
  [/\bnights?\b/, "nights"],
  [/\btrips?\b/, "trips"],
  [/\bstorms?\b/, "storms"],
  [/\bfills?\b/, "fills"],
  [/\bcycles?\b/, "cycles"],
];

const useOf = (words: string, timed: Timed): Query => ({
  ask: "use",
  unit: UNITS.find(([pattern]) => pattern.test(words))?.[1] ?? null,
  meter: /\b(?:odometer|mileage now|reading|meter|clock)\b/.test(words),
  period: timed.period,
});

const orderOf = (words: string): "newest" | "oldest" =>
  /\b(?:(?:i|we|he|she|they|it) first|(?:was|were|got|get|ever|very) first|first (?:ever|time|thing|job|go|attempt|try|fix|repair|patch|one|bead|seal\w*|\w+ing|put|did|do)|earliest|originally|the first)\b/.test(
    words,
  )
    ? "oldest"
    : "newest";

const DEAREST =
  /\b(?:dearest|costliest|most (?:expensive|costly)|biggest (?:bill|expense|outlay|spend|cost))\b/;

/** What made an end of a trouble may be any work: "what got rid of the smell". */
const lastOf = (focus: Focus, topic: Topic, period: Period | null, order: "newest" | "oldest"): Question => ({
  ask: "last",
  topic: {
    ...topic,
    actions: focus === "cure" ? [] : topic.actions,
    where: order === "oldest" ? topic.where.filter((place) => place !== "first") : topic.where,
  },
  period,
  focus: focus === "cure" && order === "oldest" ? "what" : focus,
  order,
});

const shortestIn = (words: string): "longest" | "shortest" =>
  /\b(?:shortest|least|quickest|fastest|soonest|worst)\b/.test(words) ? "shortest" : "longest";

/** "Tape and glue and the new one, from start to finish": all that was spent, on whatever stuff. */
const ALL_TOLD =
  /\b(?:from start to finish|start to finish|all told|altogether|all tries|in all|all in|every try|all (?:of )?(?:the )?(?:goes|attempts))\b/;

const queryOf = (asked: Asked, words: string, timed: Timed, topic: Topic): Question => {
  const { period } = timed;
  switch (asked.kind) {
    case "decide":
      return { ask: "decide", topic };
    case "ready":
      return { ask: "ready" };
    case "last":
      return lastOf(asked.focus ?? "what", topic, period, orderOf(words));
    case "count":
      return {
        ask: "count",
        of: asked.of === "failures" || asked.rule === "times-failed" ? "failures" : "work",
        topic,
        period,
      };
    case "longest":
      return { ask: "longest", topic, order: asked.of === "shortest" ? "shortest" : shortestIn(words) };
    case "holding":
      return { ask: "holding", topic, order: orderOf(words) };
    case "buy":
      return { ask: "buy", topic };
    case "use":
      return useOf(words, timed);
    case "cost":
      return {
        ask: "cost",
        topic: ALL_TOLD.test(words) ? { ...topic, materials: [], actions: [] } : topic,
        period,
        of: asked.of === "dearest" || DEAREST.test(words) ? "dearest" : "all",
      };
    case "open":
    case "list":
    case "ever":
    case "said":
    case "due":
    case "worst":
      return { ask: asked.kind, topic, period };
  }
};

const LONG = 22;
const GIST = 16;

/** A long question says what it wants at its start; the rest is musing. */
const gistOf = (words: string): string => {
  const all = words.split(" ");
  return all.length > LONG ? all.slice(0, GIST).join(" ") : words;
};

/** "From first patch to new unit": all of it, and no stuff or work of its own. */
const WHOLE_STORY =
  /\bfrom (?:the )?(?:very )?(?:first|start|beginning|day one|old|original)(?: (?!to\b)\w+){0,2} (?:right )?(?:to|through to|up to|till|until) (?:the )?(?:very )?(?:last|latest|new|newest|final|finish|end|now|present|replacement)(?: (?:one|unit|\w+(?= ?$)|\w+(?= (?:what|how|did|has|have|cost|all))))?/;

const wholeStory = (words: string): string => {
  const rest = words.replace(WHOLE_STORY, " ").replace(/ +/g, " ").trim();
  return isBare(topicOf(rest)) ? words : rest;
};

/** What a question is about, the thing asked about before others that it names. */
export const topicAsked = (said: string, judges: Pick<TalkJudges, "thing"> = LEARNT_TALK): Topic => {
  const story = wholeStory(said);
  return settled(topicOf(story), story, judges.thing);
};

type ListAsked = Extract<Query, { ask: "open" | "buy" }>;

/** "Is it still holding" asks of one thing, whatever list was shown. */
const HOW_IT_IS =
  /^(?:and |so |but )*(?:is|has|does|did|was) (?:it|that|she|he)\b.*\b(?:hold\w*|dry|tight|leak\w*|work\w*|good|ok|okay|fine|sound|solid|stuck|stick\w*)\b/;

/** "What's still on there", after the list was shown. */
const isListed = (asked: Asked, said: string, before: Question | null): before is ListAsked =>
  (before?.ask === "open" || before?.ask === "buy") &&
  (asked.kind === "holding" || asked.rule === "named-only" || asked.rule === "last") &&
  /\b(?:still|left|else|remain\w*|on (?:there|it|that)|now)\b/.test(said) &&
  !HOW_IT_IS.test(said) &&
  isBare(topicOf(said));

/** What lies ahead of whoever asks. */
const AHEAD: ReadonlySet<Asked["kind"]> = new Set(["open", "buy", "due"]);

/** A thing alone asks for the last work on it, a time alone for all that was done in it. */
const namedOnly = (said: string, { period }: Timed): Asked =>
  period !== null && isBare(topicOf(said)) && topicOf(said).words.length === 0
    ? { kind: "list", rule: "time-only" }
    : { kind: "last", rule: "named-only" };

/** What the rules take a question for. */
export const ruledAsk = (text: string, moment: Moment): Asked => {
  const past = periodIn(text, moment);
  const said = unwrap(past.rest).words;
  return askedIn(gistOf(said)) ?? namedOnly(said, past);
};

/** Below this, the rules say what is asked for. */
const FAMILIAR = 0.3;

/** "Is the bottom okay" asks how it is, and not what is to be looked at. */
const HOW_IS =
  /^(?:is|are) (?:the|that|those|my|our|this|it|they)\b(?: \w+){0,3}? (?:still )?(?:ok|okay|good|fine|sound|alright|holding|dry|tight|solid)\b/;
const DUE = /\b(?:due|overdue|look\w*|check\w*|inspect\w*|next|soon|servic\w+|when|before)\b/;

/** What the judge takes for a question of what is due, though it asks how something is. */
const asksHowItIs = (asks: AskedFor, text: string): boolean =>
  ASKED[asks].kind === "due" && HOW_IS.test(unwrap(text).words) && !DUE.test(text.toLowerCase());

/** "What was the fix on the waste gate": nothing there is held against anything. */
const COMPARES =
  /\b(?:\w+est|\w+er|long|last\w*|h[eo]ld\w*|worst|worse|least|most|which|st[iu]ck\w*|stood|stand\w*|surviv\w*|endur\w*|distance|kept|keep\w*|went|gone|go|did|done|doing|been|out\w+)\b/;

/** What is asked for, and how likely of the whole rig. */
const askedFor = (text: string, moment: Moment): { readonly asked: Asked; readonly ofAll: number } => {
  const ruled = ruledAsk(text, moment);
  const signs = askSigns(text, moment, ruled);
  const { asks, sure } = LEARNT_TALK.ask(signs);
  const judged: Asked = asksHowItIs(asks, text)
    ? { kind: "holding", rule: "how-is" }
    : { ...ASKED[asks], rule: "judged" };
  const comparesNothing = judged.kind === "longest" && !COMPARES.test(unwrap(text).words);
  return {
    asked: sure < FAMILIAR || comparesNothing ? ruled : judged,
    ofAll: LEARNT_TALK.ofAll(signs),
  };
};

/** Kinds that short words are often taken for. */
const MAY_BE_CUT_SHORT: ReadonlySet<AskedFor> = new Set(["last what", "list", "holding", "said"]);
const ANEW = 0.6;

/** Whether words that may be cut short say by themselves what they ask for, and it is something else. */
export const asksAnew = (text: string, moment: Moment, before: Question["ask"]): boolean => {
  const { asks, sure } = LEARNT_TALK.ask(askSigns(text, moment, ruledAsk(text, moment)));
  return sure > ANEW && !MAY_BE_CUT_SHORT.has(asks) && ASKED[asks].kind !== before;
};

/** Of a try by its number, whatever was done and used in it may be asked. */
const ofAttempt = (question: Question, attempt: Attempt): Question =>
  question.ask === "last"
    ? { ...question, attempt, order: "newest", topic: { ...question.topic, actions: [], materials: [] } }
    : question;

/**
 * The question that a text asks. `context` is the question before it, for "it" and "that one".
 * A text that names a thing and no kind of question asks for the last work on it.
 */
export const ask = (asking: string, moment: Moment, context: Before | null): Question => {
  const before = context?.question ?? null;
  const text = inThatYear(questionAlone(asking), context);
  const past = periodIn(text, moment);
  const whole = unwrap(past.rest).words;
  const tried = attemptIn(whole);
  const judged = askedFor(text, moment);
  const asked = asksPlainlyFor(judged.asked, whole);
  const said = asked.kind === "ever" ? withoutContrast(whole) : withoutLeftOut(tried?.rest ?? whole);
  const timed = AHEAD.has(asked.kind) ? periodIn(text, moment, "future") : sameTime(said, past, before);
  if (isListed(asked, said, before)) return { ...before, topic: EMPTY_TOPIC };
  const known =
    context === null || asksOfAll(asked, judged.ofAll, said, timed, context)
      ? undefined
      : topicBefore(before);
  const topic = carried(narrowed(topicAsked(said), asked, judged.ofAll, { words: said, text }), said, known);
  const isWeighed = asked.kind === "longest" && context?.fresh === true;
  const question = queryOf(asked, said, timed, isWeighed ? weighedOn(topic, said, known) : topic);
  return tried === undefined ? question : ofAttempt(question, tried.attempt);
};
