import { Temporal } from "temporal-polyfill";
import type { Intent, Purpose } from "../../shared/memory/intent.ts";
import { EMPTY_TOPIC } from "../../shared/memory/query.ts";
import type { Scene } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { ask, asksAnew } from "../ask/ask.ts";
import { coreOf } from "../ask/core.ts";
import { asksOfAnotherTime, followUp } from "../ask/follow-up.ts";
import type { Before, Question } from "../ask/question.ts";
import { spelledOut } from "../ask/spelled-out.ts";
import { topicOf } from "../ask/topic.ts";
import { type Corrected, correct, correctLoosely } from "../correct/correct.ts";
import { plain } from "../correct/pieces.ts";
import { respelt, reworded } from "../correct/reworded.ts";
import { tellsAnything } from "../read/tells-anything.ts";
import { controlIn } from "./control.ts";
import { elided, elsewhere } from "./elided.ts";
import { journeyIn } from "./journey.ts";
import { pickIn } from "./pick.ts";
import { splitQuestion } from "./sentences.ts";
import { settingIn } from "./settings.ts";
import { TELLS } from "./tells.ts";
import { tickIn } from "./tick.ts";
import { verdictAsked, verdictOnShown } from "./verdict.ts";

const alone = (purpose: Purpose): Intent => ({ ...purpose, rest: null });

const purposeOf = (question: Question): Purpose => {
  if (question.ask === "decide") return { is: "decide", topic: question.topic };
  return question.ask === "ready" ? { is: "ready" } : { is: "ask", query: question };
};

const namesThing = (query: Question): boolean =>
  query.ask === "ready" || query.ask === "use" || query.topic.named.length + query.topic.systems.length > 0;

const GLOBAL: ReadonlySet<Question["ask"]> = new Set([
  "open",
  "buy",
  "cost",
  "list",
  "use",
  "due",
  "worst",
  "ready",
]);

/** "The first time we packed the bearings": what is asked about. */
const DESCRIBES =
  /^(?:(?:and|so|but|now|well|oh|then) )*(?:that|the|those|my) (?:\w+ ){1,3}(?:that )?(?:i|we) /i;

/** Words that may stand for a thing told of before the question. */
const POINTS =
  /\b(?:it|its|them|they|those|these|ones?|there|(?:that|this)(?! (?:year|month|week|spring|summer|autumn|fall|winter|season)))\b/i;

/** "A flat on the coast would be dearer. What went into the caravan in 2022?": asked of all, whatever was named before. */
const asksOfAll = (question: Question, asks: string): boolean =>
  GLOBAL.has(question.ask) && !POINTS.test(asks);

/** The time that the words before a question name, where it names none itself. */
const inTimeBefore = (question: Question, whole: Question): Question =>
  "period" in question && question.period === null ? inTimeOf(whole, question) : question;

/** A question in the time that another names: the time of what is told before is not asked about. */
const inTimeOf = (timed: Question, question: Question): Question =>
  "period" in timed && "period" in question ? { ...question, period: timed.period } : question;

/** "I write about our summer of 2023. What was done in those months?" */
const OF_THAT_TIME =
  /\b(?:in|over|during|within|for) (?:those|these|that|all those) (?:months|weeks|days|years|time|stretch|spell)\b|\bback then\b/i;

/** A description before the question ("that bead up top, is it still dry?") belongs to it; a note before it is a note. */
const askedWith = (asks: string, tells: string | null, moment: Moment, before: Before | null): Intent => {
  const plain = ask(asks, moment, before);
  if (tells === null) return alone(purposeOf(plain));
  const question = OF_THAT_TIME.test(asks)
    ? inTimeBefore(plain, ask(`${tells}, ${asks}`, moment, before))
    : plain;
  const isNote = tellsAnything(tells, moment) && !DESCRIBES.test(tells);
  if (isNote && (namesThing(question) || GLOBAL.has(question.ask)))
    return { ...purposeOf(question), rest: tells };
  const whole = inTimeOf(question, ask(`${tells}, ${asks}`, moment, before));
  const rest = isNote ? tells : null;
  const plainly = ask(asks, moment, null);
  if (asksOfAll(plainly, asks) && !namesThing(plainly))
    return { ...purposeOf(inTimeBefore(question, whole)), rest };
  return { ...purposeOf(namesThing(plainly) ? question : whole), rest };
};

const HOURS: Record<Corrected["strength"], number> = { strong: Number.POSITIVE_INFINITY, weak: 48, none: 12 };

const hoursSince = (at: string, moment: Moment): number =>
  Temporal.Instant.from(at).until(Temporal.Instant.from(moment.said)).total("hours");

/** Whether something that can be put right was shown within so many hours. */
const isFresh = (scene: Scene, hours: number, moment: Moment): boolean =>
  [scene.last, scene.shown].some(
    (showing) => showing !== null && showing.of !== "nudge" && hoursSince(showing.at, moment) <= hours,
  );

/** What is only half announced as a correction is one while what it may correct is fresh. */
const isCorrection = (corrected: Corrected, moment: Moment, scene: Scene): boolean => {
  if (corrected.strength === "strong" || scene.replyTo !== null) return true;
  return isFresh(scene, HOURS[corrected.strength], moment);
};

const corrected = (text: string, moment: Moment, scene: Scene): Intent | undefined => {
  const found = correct(respelt(text), moment);
  if (found === undefined || !isCorrection(found, moment, scene)) return undefined;
  const announced = found.strength !== "none";
  return { is: "correct", correction: found.correction, announced, rest: found.rest };
};

/** The same in one of the many forms that have a plainer one. */
const correctedPlainly = (text: string, moment: Moment, scene: Scene): Intent | undefined => {
  const plainer = reworded(text);
  return plainer === undefined ? undefined : corrected(plainer, moment, scene);
};

const FRESH_HOURS = 0.5;

/** A bare value right after a note, when it reads as no note of its own. */
const correctedLoosely = (text: string, moment: Moment, scene: Scene): Intent | undefined => {
  const fresh = scene.replyTo !== null || isFresh(scene, FRESH_HOURS, moment);
  const found = fresh ? correctLoosely(text, moment) : undefined;
  if (found === undefined || tellsAnything(text, moment)) return undefined;
  return { is: "correct", correction: found.correction, announced: false, rest: null };
};

/** What "it" in a question may be: the thing asked about before, else the one thing told of last. */
const before = (scene: Scene, moment: Moment): Before | null => {
  if (scene.asked !== null)
    return { question: scene.asked, fresh: true, date: scene.shown?.records[0]?.fields.date ?? null };
  const told = scene.replyTo ?? scene.last;
  const [component, ...others] = new Set(told?.records.map(({ fields }) => fields.component));
  if (told === null || component === undefined || others.length > 0) return null;
  const topic = { ...EMPTY_TOPIC, named: [{ component, sure: 1 }] };
  const fresh = scene.replyTo !== null || hoursSince(told.at, moment) < HOURS.none;
  return { question: { ask: "holding", topic, order: "newest" }, fresh };
};

/** A whole message taken for a question: by what is asked at its end, where that says what about. */
export const askedWhole = (text: string, moment: Moment, scene: Scene): Intent => {
  const whole = spelledOut(text);
  const core = coreOf(whole);
  const ofWhole = ask(whole, moment, before(scene, moment));
  const asked = core === undefined ? undefined : ask(core, moment, null);
  const isWhole = asked === undefined || !(namesThing(asked) || asksOfAll(asked, core ?? ""));
  return alone(purposeOf(isWhole ? ofWhole : inTimeBefore(asked, ofWhole)));
};

const MOST_TO_NAME = 6;

/** "And on the hot water": a thing and nothing said of it. */
const onlyNames = (text: string): boolean => {
  const { named, systems, actions } = topicOf(text);
  return (
    /^\W*(?:and|what about|how about|same)\b/i.test(text) &&
    !/\d|\b(?:new|another|more|too|also|again|as well)\b/i.test(text) &&
    (text.split(/[,;]/)[0] ?? "").trim().split(/\s+/).length <= MOST_TO_NAME &&
    named.length + systems.length > 0 &&
    actions.length === 0
  );
};

/** A question cut short, and no note. Long after the question before, it says so: "and the gutter". */
const isFollowUp = (text: string, moment: Moment, scene: Scene): boolean =>
  (scene.asked !== null && onlyNames(text)) ||
  ((scene.asked !== null || /^\W*(?:and|what about|how about|same)\b/i.test(text)) &&
    !tellsAnything(text, moment));

/** "It still leaks" names no thing, though a leak may be many. */
const TROUBLE_ONLY = /^(?:\w+ ){0,4}(?:leak|drip)(?:s|ing|ed|y)?(?: \w+){0,2}$/;

const namesNoThing = (words: string): boolean =>
  TROUBLE_ONLY.test(words) || (topicOf(words).named[0]?.sure ?? 0) < 0.6;

/** "Did I say gray? I meant black." */
const MISSAID = /^\W*(?:(?:wait|oh|hang on|um|sorry)\W+)*did i (?:say|tell you|write|put)\b/i;

const LONG = 600;

/** What rules alone take a message for: a note, a question, a correction, a word on what was shown, or something else to do. */
export const understoodByRules = (text: string, moment: Moment, scene: Scene): Intent => {
  const words = plain(text);
  if (text.length > LONG) return TELLS;
  const picked = pickIn(words, scene);
  if (picked !== undefined) return alone(picked);
  const control = controlIn(words);
  if (control !== undefined && !(control.is === "chat" && scene.pending?.is === "nudge"))
    return alone(control);
  const setting = settingIn(text, words);
  if (setting !== undefined) return alone({ is: "set", setting });
  const plainly = correctedPlainly(text, moment, scene);
  if (plainly !== undefined) return plainly;
  const asked = spelledOut(text);
  const followed = scene.askedEarlier === null ? undefined : followUp(asked, moment, scene.askedEarlier);
  const anew = followed !== undefined && !asksOfAnotherTime(asked) && asksAnew(asked, moment, followed.ask);
  if (followed !== undefined && isFollowUp(asked, moment, scene) && !anew)
    return alone({ is: "ask", query: followed });
  const { asks, tells } = splitQuestion(asked, moment);
  const verdict = asks === null ? verdictAsked(words, scene) : undefined;
  if (verdict !== undefined) return alone(verdict);
  if (asks !== null && tells !== null && MISSAID.test(asks)) {
    const correction = corrected(tells, moment, scene);
    if (correction !== undefined) return correction;
  }
  if (asks !== null) return askedWith(asks, tells, moment, before(scene, moment));
  return toldOrCorrected(text, words, moment, scene);
};

const toldOrCorrected = (text: string, words: string, moment: Moment, scene: Scene): Intent => {
  const ticked = tickIn(words, scene);
  if (ticked !== undefined) return alone(ticked);
  const again = elsewhere(text, moment, scene);
  if (again !== undefined) return alone(again);
  const correction = corrected(text, moment, scene);
  if (correction !== undefined) return correction;
  const journey = journeyIn(text, words, moment);
  if (journey !== undefined) return alone(journey);
  const verdict = namesNoThing(words) ? verdictOnShown(words, scene) : undefined;
  const loosely = verdict === undefined ? correctedLoosely(text, moment, scene) : undefined;
  if (loosely !== undefined) return loosely;
  return alone(verdict ?? elided(text, words, moment, scene));
};
