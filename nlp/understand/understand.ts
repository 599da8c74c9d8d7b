import type { Intent } from "../../shared/memory/intent.ts";
import type { Query } from "../../shared/memory/query.ts";
import type { Scene } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import type { ComponentId } from "../../shared/vocabulary.ts";
import { onRecord } from "../ask/on-record.ts";
import { ASIDE, isReported, reportedBehind } from "../ask/plain-question.ts";
import { speakingSigns } from "../ask/spoken-of.ts";
import { topicOf } from "../ask/topic.ts";
import { plainDays } from "../correct/plain-days.ts";
import { LEARNT_TALK, type MessageKind, type TalkJudges } from "../judges/talk.ts";
import { split } from "../lexicon/tokens.ts";
import { tellsAnything } from "../read/tells-anything.ts";
import { askedWhole, understoodByRules } from "./by-rules.ts";
import { saysItIsIn, tellsItIsIn } from "./got-it.ts";
import { happeningsIn } from "./happenings.ts";
import { type Meant, meantIn } from "./lately.ts";
import { messageSigns } from "./message-signs.ts";
import { putRight } from "./put-right.ts";
import { TELLS } from "./tells.ts";

/** What only rules settle. */
const SETTLED: ReadonlySet<Intent["is"]> = new Set([
  "pick",
  "undo",
  "redo",
  "set",
  "help",
  "show",
  "chat",
  "tick",
]);
const ASKS: ReadonlySet<Intent["is"]> = new Set(["ask", "decide", "ready"]);

/** Longer messages, in letters or in words and marks, are left to the rules. */
const LONG = 600;
const MANY = 130;
/**
 * From here on, words are taken for a question: where the rules take them for one and they end in its mark, with an asking
 * word or mark, without one, and where they tell of work; and where they say what somebody else asks.
 */
const ASKED_BY_ALL = 0.05;
const ASKED_FOR_ANOTHER = 0.02;
const ASKED = 0.25;
const ASKED_IN_OTHER_WORDS = 0.4;
const ASKED_FOR_SURE = 0.66;
/** What is one of these is no correction, unless the judge is as sure as this. */
const CORRECTED_FOR_SURE: ReadonlyMap<Intent["is"], number> = new Map([
  ["verdict", 0.6],
  ["leave", 0.9],
  ["home", 0.98],
]);
const ASKING = /\?|\b(?:what|which|when|where|who|why|how)/i;
/** "Do you know when I redid the seven pin": asked, though it tells of work. */
const ASKS_IF_KNOWN =
  /^\W*(?:(?:hey|hi|and|so|ok|okay|well)\W+)*(?:do you (?:know|remember|recall)|can you (?:tell|say)|could you tell|any idea|remind me|tell me)\W+(?:me )?(?:when|who|how|where|which|what)\b/i;
/** "What must I buy, as he is leaving for town": a journey told in words that ask is none. */
const ASKED_NOT_LEFT = 0.9;

/** A question first, whatever else it seems to be, unless we asked for a word. */
const isAskedInstead = ({ is }: Intent, text: string, question: number, { pending }: Scene): boolean => {
  if (pending !== null) return false;
  if (is === "verdict") return question > ASKED_FOR_SURE;
  return (is === "leave" || is === "home") && question > ASKED_NOT_LEFT && ASKING.test(text);
};

/** Work, use, or what happens to a rig: nothing that may be lost. */
const tellsOf = (text: string, moment: Moment): boolean =>
  tellsAnything(text, moment) || happeningsIn(text, moment).length > 0;

/** How a note before a question begins, or ends: "greased the hubs, when did I last do them". */
const OPENS =
  /^\W*(?:(?:and|so|oh|ok|okay|well|right|just|now|also|finally|hi|hey|hello)\W+)*(?:i|we|he|she|they|ive|did|had|got|put|cut|ran|\w+ed)\b|[.!;\n]\s*$/i;

/** "It was Friday, the fourth": no fourth of three that were shown. */
const ofWhatWasShown = (ruled: Intent, { last, shown, replyTo }: Scene): Intent => {
  if (ruled.is !== "correct" || ruled.correction.target.by !== "number") return ruled;
  const most = Math.max(...[last, shown, replyTo].map((showing) => showing?.records.length ?? 0));
  return most > 0 && ruled.correction.target.numbers.some((number) => number > most) ? TELLS : ruled;
};

/** From here on, a note is a word on how work that is known does, and on this work of all that it may be. */
const WORD = 0.5;
const SURELY_THIS = 0.5;
/** The same, where it tells nothing else, and no other work is meant. */
const WORD_OR_NOTHING = 0.3;
const SURELY_NO_OTHER = 0.85;

const isWordOn = (
  heard: Intent,
  { word, correction, removal }: Readonly<Record<MessageKind, number>>,
  { shown, sure }: Meant,
  tells: boolean,
): heard is Extract<Intent, { is: "tell" }> =>
  heard.is === "tell" &&
  (word > WORD || (word > WORD_OR_NOTHING && sure > SURELY_NO_OTHER && !tells)) &&
  word > correction &&
  word > removal &&
  sure > SURELY_THIS &&
  shown.fields.kind === "repair";

/** As sure as this, a note is a word on older work, though it is not clear on which. */
const WORD_ON_SOME = 0.6;

/** "Still bone dry", which may be said of several works: these are asked about. */
const onSomeWork = (
  intent: Intent,
  { word, correction, removal }: Readonly<Record<MessageKind, number>>,
  { works }: Meant,
): Intent =>
  intent.is === "tell" && intent.about === null && word > Math.max(WORD_ON_SOME, correction, removal)
    ? { ...intent, maybe: works }
    : intent;

const goingOn = (intent: Intent, { shown, sure, wanted }: Meant, text: string): Intent => {
  if (intent.is !== "tell") return intent;
  if (sure > SURELY_NO_OTHER) return { ...intent, after: shown.id };
  return tellsItIsIn(text) ? { ...intent, after: wanted } : intent;
};

const isMarked = (text: string): boolean => text.trimEnd().endsWith("?");

/** The same before anything was told, of which nobody asks, where the rules hear no question. */
const ASKED_OF_NOTHING = 0.9;
const isNothingKnown = ({ last, shown, replyTo, older }: Scene): boolean =>
  last === null && shown === null && replyTo === null && older.length === 0;

/** "The splint's holding after another blow": said of a thing, and nothing asked. */
const STATES =
  /^\s*(?:(?:the|that|my|our|this|those|these) )?(?!(?:what|which|who|how|where|when|why|any|anything|whats|hows)\b)[\w-]+(?: [\w-]+){0,3}(?:['’]s| is| are) (?:still )?(?:holding|dry|fine|good|solid|sound|tight|leaking|dripping|working)\b/i;

/** "The hatch is still good, but is it". */
const ENDS_ASKING = /\b(?:but|or) (?:is|are|has|have|did|does|was|were) (?:it|they|she|he|not)\W*$/i;

/** "And flushed the hot water heater", also right behind a question: a deed. */
const DID =
  /^\W*(?:(?:and|so|oh|ok|okay|well|just|also|then) )*(?!(?:need|feed|speed|bleed|shed|bed|used)\b)\w{3,}ed (?:the|my|our|both|all|that|those|it)\b/i;
const ASKED_THOUGH_DONE = 0.99;

/** "Keeps beeping and I can't work out why": told, and nothing asked. */
const PUZZLED =
  /\b(?:can'?t|cannot|couldn'?t|don'?t|dont|dunno|no idea|not sure|beats me|god knows|who knows)\b[^?.]{0,25}\bwhy\W*$/i;

/** How sure the judge must be that a text asks, where the reader finds work or use in it and where the rules hear a question. */
const leastToAsk = (text: string, asks: boolean, found: boolean): number => {
  if (asks && (isReported(text) || ASKS_IF_KNOWN.test(text))) return ASKED_FOR_ANOTHER;
  if (found && !asks && DID.test(text) && !ASKING.test(text)) return ASKED_THOUGH_DONE;
  if (found) return asks ? ASKED_IN_OTHER_WORDS : ASKED_FOR_SURE;
  if (asks && isMarked(text)) return ASKED_BY_ALL;
  if (!isMarked(text) && STATES.test(text) && !ENDS_ASKING.test(text)) return ASKED_OF_NOTHING;
  return asks || ASKING.test(text) ? ASKED : ASKED_IN_OTHER_WORDS;
};

/** The same, before it is looked at which of the things on record a question is about. */
const taken = (judges: TalkJudges, text: string, moment: Moment, scene: Scene): Intent => {
  const reported = text.length > LONG ? undefined : reportedBehind(text);
  if (reported !== undefined && !tellsOf(reported.lead, moment))
    return taken(judges, reported.question, moment, scene);
  const ruled = ofWhatWasShown(understoodByRules(text, moment, scene), scene);
  if (SETTLED.has(ruled.is) || text.length > LONG || split(text).length > MANY) return ruled;
  const said = plainDays(text);
  const meant = meantIn(judges, said, moment, scene);
  const kindOf = (part: string, taken: Intent) =>
    judges.message(messageSigns({ text: part, moment, meant, ruled: taken, asked: scene.asked !== null }));
  const kind = kindOf(text, ruled);
  if (isAskedInstead(ruled, text, kind.question, scene)) return askedWhole(text, moment, scene);
  const surely = CORRECTED_FOR_SURE.get(ruled.is);
  if (surely !== undefined)
    return meant === undefined || kind.correction <= surely
      ? ruled
      : putRight(ruled, { kind, tells: false }, meant, said, moment, judges);
  const found = !isMarked(text) && tellsOf(text, moment);
  if (found && PUZZLED.test(text)) return ASKS.has(ruled.is) ? TELLS : ruled;
  const asks = ASKS.has(ruled.is);
  const tells = !asks && found;
  const enough = isNothingKnown(scene) && !asks ? ASKED_OF_NOTHING : leastToAsk(text, asks, found);
  if (kind.question > enough && kind.question > kind.correction) {
    const apart =
      ruled.rest === null ||
      (!ASIDE.test(ruled.rest) && OPENS.test(ruled.rest) && kindOf(ruled.rest, TELLS).question < ASKED);
    return asks && apart ? ruled : askedWhole(text, moment, scene);
  }
  const nothingSaid = ruled.is === "correct" && scene.last === null && scene.replyTo === null;
  const heard = (asks && kind.question <= enough) || (nothingSaid && found) ? TELLS : ruled;
  if (meant === undefined) return heard;
  if (heard.is === "tell" && saysItIsIn(text, meant.shown.fields)) return { ...heard, after: meant.shown.id };
  const intent = isWordOn(heard, kind, meant, found)
    ? { ...heard, about: meant.shown.id }
    : putRight(heard, { kind, tells }, meant, said, moment, judges);
  return onSomeWork(goingOn(intent, meant, text), kind, meant);
};

/** What the question before was about, else the one thing told of last. */
const thingBefore = ({ asked, replyTo, last }: Scene): ComponentId | undefined => {
  if (asked !== null && "topic" in asked) return asked.topic.named[0]?.component;
  const [component, ...others] = new Set((replyTo ?? last)?.records.map(({ fields }) => fields.component));
  return others.length > 0 ? undefined : component;
};

/** "Which of my goes at it held longest", right after a question: what is asked about was named in that. */
const isCarried = (query: Query, text: string, { asked }: Scene): boolean =>
  asked !== null &&
  "topic" in query &&
  "topic" in asked &&
  query.topic.named[0] !== undefined &&
  query.topic.named[0].component === asked.topic.named[0]?.component &&
  topicOf(text).named.length === 0;

/** As `understand`, by judges that may be others. */
export const understandBy = (judges: TalkJudges, text: string, moment: Moment, scene: Scene): Intent => {
  const intent = taken(judges, text, moment, scene);
  if (intent.is !== "ask") return intent;
  const heard = {
    known: [...new Map([...scene.older, ...scene.spokenOf].map((each) => [each.id, each])).values()],
    before: thingBefore(scene),
    spoken: judges.spoken(speakingSigns(text)),
    carried: isCarried(intent.query, text, scene),
  };
  return { ...intent, query: onRecord(intent.query, heard, judges.known) };
};

/**
 * What a message means here: a note, a question, a correction, a word on what was shown, or something else to do. Rules
 * propose; judges learnt from messages of which it is known what they are settle it.
 */
export const understand = (text: string, moment: Moment, scene: Scene): Intent =>
  understandBy(LEARNT_TALK, text, moment, scene);
