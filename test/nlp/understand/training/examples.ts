import { ruledAsk, topicAsked } from "../../../../nlp/ask/ask.ts";
import { askSigns } from "../../../../nlp/ask/ask-signs.ts";
import { periodIn } from "../../../../nlp/ask/period.ts";
import { unwrap } from "../../../../nlp/ask/plain-question.ts";
import { spelledOut } from "../../../../nlp/ask/spelled-out.ts";
import { likelySpokenOf, speakingSigns } from "../../../../nlp/ask/spoken-of.ts";
import { keptAs, type Offer } from "../../../../nlp/correct/offer.ts";
import { type OfferScene, offerSigns, saysSame } from "../../../../nlp/correct/offer-signs.ts";
import { offerScene } from "../../../../nlp/correct/weighed.ts";
import type { Candidate } from "../../../../nlp/correct/which-signs.ts";
import { LEARNT_TALK, type Offered, type TalkJudges } from "../../../../nlp/judges/talk.ts";
import { scan } from "../../../../nlp/read/scan.ts";
import { understoodByRules } from "../../../../nlp/understand/by-rules.ts";
import { meantIn } from "../../../../nlp/understand/lately.ts";
import { splitQuestion } from "../../../../nlp/understand/sentences.ts";
import { understandBy } from "../../../../nlp/understand/understand.ts";
import { isSuchStuff } from "../../../../shared/memory/materials.ts";
import type { Scene } from "../../../../shared/memory/scene.ts";
import { plainWords, shareAny } from "../../../../shared/memory/words.ts";
import type { Choice, Example } from "../../read/training/linear.ts";
import type { KnownMessage } from "./known.ts";

export type TalkLessons = {
  readonly message: readonly Example[];
  readonly offer: readonly Example[];
  readonly ask: readonly Example[];
  readonly about: readonly Example[];
  readonly thing: readonly Choice[];
};

type Spoken = TalkJudges["spoken"];

/** As many records of each thing that a message seems to speak of. */
const OF_SPOKEN = 3;

/** The scene of a message, with what is on record of the things that it seems to speak of. */
const sceneOf = ({ text, scene, told }: KnownMessage, spoken: Spoken): Scene => ({
  ...scene,
  spokenOf: likelySpokenOf(spoken(speakingSigns(text))).flatMap((component) =>
    told.filter(({ fields }) => fields.component === component).slice(0, OF_SPOKEN),
  ),
});

const isAbout = ({ about }: KnownMessage, candidates: readonly Candidate[]): boolean[] =>
  candidates.map(({ fields }) => fields === about);

const whichOf = (known: KnownMessage, spoken: Spoken): Choice[] => {
  if (known.about === undefined) return [];
  const choices: Choice[] = [];
  const show: Pick<TalkJudges, "which" | "spoken"> = {
    spoken,
    which: (signs, candidates) => {
      const right = isAbout(known, candidates);
      if (right.includes(true)) choices.push({ signs, right });
      return right.map(Number);
    },
  };
  meantIn(show, known.text, known.moment, sceneOf(known, spoken));
  return choices;
};

/** As it is known which record a message is about, else as learnt. */
const telling = (known: KnownMessage, spoken: Spoken): Pick<TalkJudges, "which" | "spoken"> => ({
  spoken,
  which: (_, candidates) => {
    const right = isAbout(known, candidates);
    return right.includes(true) ? right.map(Number) : candidates.map(({ isLast }) => Number(isLast));
  },
});

const listed = (value: unknown): string[] => (Array.isArray(value) ? value.map(String) : []);
const like = (one: string, all: readonly string[]): boolean => all.some((each) => isSuchStuff(one, each));

type Fixed = NonNullable<KnownMessage["fixed"]>;

const stuffSaid = (offer: Offer, { fields }: OfferScene, fixed: Fixed): Offered | "" => {
  if (fixed.materials === undefined) return "";
  const wanted = listed(fixed.materials);
  if (!like(offer.is, wanted)) return saysSame(offer, fields) ? "drop" : "";
  if (saysSame(offer, fields)) return "";
  const kept = keptAs("material", fields);
  return kept.length > 0 && kept.every((each) => like(each, wanted)) ? "also" : "in";
};

/** What an offer turned out to be. */
const saidOf = (offer: Offer, scene: OfferScene, fixed: Fixed): Offered | "" => {
  if (offer.field === "material") return stuffSaid(offer, scene, fixed);
  if (offer.field === "who") {
    const by = fixed.done_by;
    return by !== undefined && (by === "me") === (offer.is === "me") ? "in" : "";
  }
  const said = fixed[offer.field];
  if (typeof said !== "string" && typeof said !== "number") return "";
  const wanted = String(said);
  if (offer.field === "where") return shareAny(plainWords(wanted), new Set(plainWords(offer.is))) ? "in" : "";
  return wanted.replace(/~/g, "") === offer.is ? "in" : "";
};

const offersOf = (known: KnownMessage, spoken: Spoken): Example[] => {
  const { text, moment, fixed } = known;
  const scene = sceneOf(known, spoken);
  const meant = meantIn(telling(known, spoken), text, moment, scene);
  if (fixed === undefined || meant === undefined) return [];
  const ruled = understoodByRules(text, moment, scene);
  const changes = ruled.is === "correct" ? ruled.correction.changes : [];
  const bench = offerScene(
    scan(text, moment).tokens,
    meant.offers,
    meant.shown.fields,
    changes,
    meant.shown.words ?? "",
  );
  return meant.offers.flatMap((offer) =>
    offer.field !== "material" && saysSame(offer, meant.shown.fields)
      ? []
      : [{ signs: offerSigns(bench, offer), right: saidOf(offer, bench, fixed) }],
  );
};

/** The part of a message that asks. */
const saidIn = ({ text, moment }: KnownMessage): string => {
  const whole = spelledOut(text);
  return splitQuestion(whole, moment).asks ?? whole;
};

const asked = (known: KnownMessage): readonly string[] => {
  const { moment } = known;
  const said = saidIn(known);
  return askSigns(said, moment, ruledAsk(said, moment));
};

const asksOf = (known: KnownMessage): Example[] =>
  known.asks === undefined ? [] : [{ signs: asked(known), right: known.asks }];

const thingOf = (known: KnownMessage): Choice[] => {
  if (known.component === undefined) return [];
  const seen: (readonly string[])[] = [];
  const show = (signs: readonly (readonly string[])[]) => {
    seen.push(...signs);
    return [];
  };
  const { words } = unwrap(periodIn(saidIn(known), known.moment).rest);
  const { named } = topicAsked(words, { thing: show });
  const right = named.slice(0, seen.length).map(({ component }) => component === known.component);
  return right.includes(true) ? [{ signs: seen, right }] : [];
};

/** Which of the things on record a question is about, where the log before it is known. */
const knownOf = (known: KnownMessage, spoken: Spoken): Choice[] => {
  if (known.ofOneLog !== true || (known.component === undefined && known.never !== true)) return [];
  const choices: Choice[] = [];
  const show: TalkJudges = {
    ...LEARNT_TALK,
    spoken,
    message: () => ({ question: 1, correction: 0, removal: 0, word: 0 }),
    known: (signs, things) => {
      const asked = known.component ?? things.find(({ sure }) => sure > 0)?.component;
      const right = things.map(({ component }) => component === asked);
      if (right.includes(true)) choices.push({ signs, right });
      return right.map(Number);
    },
  };
  understandBy(show, known.text, known.moment, sceneOf(known, spoken));
  return choices;
};

const aboutOf = (known: KnownMessage): Example[] =>
  known.ofAll === undefined ? [] : [{ signs: asked(known), right: known.ofAll ? "all" : "" }];

/** What messages of which it is known what they are teach about which of several records they are about. */
export const whichLessons = (messages: readonly KnownMessage[], spoken: Spoken): readonly Choice[] =>
  messages.flatMap((known) => whichOf(known, spoken));

/** What questions teach about which of the things on record they are about, by a judge of what they speak of. */
export const knownLessons = (messages: readonly KnownMessage[], spoken: Spoken): readonly Choice[] =>
  messages.flatMap((known) => knownOf(known, spoken));

/** What messages of which it is known what they are teach, by judges of which record they are about and of what they speak of. */
export const talkLessons = (
  messages: readonly KnownMessage[],
  { which, spoken }: Pick<TalkJudges, "which" | "spoken">,
): TalkLessons => {
  const message: Example[] = [];
  const listen = (right: string): TalkJudges => ({
    ...LEARNT_TALK,
    which,
    spoken,
    message: (signs) => {
      message.push({ signs, right });
      return { question: 0, correction: 0, removal: 0, word: 0 };
    },
  });
  for (const known of messages)
    understandBy(listen(known.is), known.text, known.moment, sceneOf(known, spoken));
  return {
    message,
    offer: messages.flatMap((known) => offersOf(known, spoken)),
    ask: messages.flatMap(asksOf),
    about: messages.flatMap(aboutOf),
    thing: messages.flatMap(thingOf),
  };
};
