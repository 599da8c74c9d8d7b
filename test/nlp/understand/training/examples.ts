import { ruledAsk } from "../../../../nlp/ask/ask.ts";
import { askSigns } from "../../../../nlp/ask/ask-signs.ts";
import { spelledOut } from "../../../../nlp/ask/spelled-out.ts";
import { type OfferScene, offerSigns, saysSame } from "../../../../nlp/correct/offer-signs.ts";
import { keptAs, type Offer } from "../../../../nlp/correct/offers.ts";
import { offerScene } from "../../../../nlp/correct/weighed.ts";
import { LEARNT_TALK, type Offered, type TalkJudges } from "../../../../nlp/judges/talk.ts";
import { scan } from "../../../../nlp/read/scan.ts";
import { understoodByRules } from "../../../../nlp/understand/by-rules.ts";
import { meantIn } from "../../../../nlp/understand/lately.ts";
import { splitQuestion } from "../../../../nlp/understand/sentences.ts";
import { understandBy } from "../../../../nlp/understand/understand.ts";
import { compareMaterials } from "../../../../shared/memory/materials.ts";
import { EMPTY_SCENE, type Scene } from "../../../../shared/memory/scene.ts";
import { plainWords, shareAny } from "../../../../shared/memory/words.ts";
import type { Example } from "../../read/training/linear.ts";
import type { KnownMessage } from "./talk.ts";

export type TalkLessons = {
  readonly message: readonly Example[];
  readonly offer: readonly Example[];
  readonly ask: readonly Example[];
  readonly about: readonly Example[];
};

const MINUTE_MS = 60_000;

const sceneOf = ({ before, moment }: KnownMessage): Scene => {
  if (before === null) return EMPTY_SCENE;
  const at = new Date(Date.parse(moment.said) - before.minutes * MINUTE_MS).toISOString();
  const showing = { at, of: "note", records: [{ id: 1, fields: before.fields }], usage: [] } as const;
  return { ...EMPTY_SCENE, last: showing, shown: showing };
};

const listed = (value: unknown): string[] => (Array.isArray(value) ? value.map(String) : []);
const like = (one: string, all: readonly string[]): boolean =>
  all.some((each) => compareMaterials([each], [one]) === "same");

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

const offersOf = (known: KnownMessage): Example[] => {
  const { text, moment, fixed } = known;
  const scene = sceneOf(known);
  const meant = meantIn(text, moment, scene);
  if (fixed === undefined || meant === undefined) return [];
  const ruled = understoodByRules(text, moment, scene);
  const changes = ruled.is === "correct" ? ruled.correction.changes : [];
  const bench = offerScene(scan(text, moment).tokens, meant.offers, meant.shown.fields, changes);
  return meant.offers.flatMap((offer) =>
    offer.field !== "material" && saysSame(offer, meant.shown.fields)
      ? []
      : [{ signs: offerSigns(bench, offer), right: saidOf(offer, bench, fixed) }],
  );
};

const asked = ({ text, moment }: KnownMessage): readonly string[] => {
  const whole = spelledOut(text);
  const said = splitQuestion(whole, moment).asks ?? whole;
  return askSigns(said, moment, ruledAsk(said, moment));
};

const asksOf = (known: KnownMessage): Example[] =>
  known.asks === undefined ? [] : [{ signs: asked(known), right: known.asks }];

const aboutOf = (known: KnownMessage): Example[] =>
  known.ofAll === undefined ? [] : [{ signs: asked(known), right: known.ofAll ? "all" : "" }];

/** What messages of which it is known what they are teach. */
export const talkLessons = (messages: readonly KnownMessage[]): TalkLessons => {
  const message: Example[] = [];
  const listen = (right: string): TalkJudges => ({
    ...LEARNT_TALK,
    message: (signs) => {
      message.push({ signs, right });
      return { question: 0, correction: 0, removal: 0 };
    },
  });
  for (const known of messages) understandBy(listen(known.is), known.text, known.moment, sceneOf(known));
  return {
    message,
    offer: messages.flatMap(offersOf),
    ask: messages.flatMap(asksOf),
    about: messages.flatMap(aboutOf),
  };
};
