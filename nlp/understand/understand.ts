import type { Intent } from "../../shared/memory/intent.ts";
import type { Scene } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { LEARNT_TALK, type TalkJudges } from "../judges/talk.ts";
import { split } from "../lexicon/tokens.ts";
import { read } from "../read/index.ts";
import { askedWhole, understoodByRules } from "./by-rules.ts";
import { happeningsIn } from "./happenings.ts";
import { meantIn } from "./lately.ts";
import { messageSigns } from "./message-signs.ts";
import { putRight, TELLS } from "./put-right.ts";

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
/** From here on, words are taken for a question: with an asking word or mark, without one, and where they tell of work. */
const ASKED = 0.25;
const ASKED_IN_OTHER_WORDS = 0.4;
const ASKED_FOR_SURE = 0.6;
/** What is one of these is no correction, unless it is surely one. */
const OTHERWISE: ReadonlySet<Intent["is"]> = new Set(["verdict", "leave", "home"]);
const CORRECTED_FOR_SURE = 0.6;
const ASKING = /\?|\b(?:what|which|when|where|who|why|how)/i;

/** Work, use, or what happens to a rig: nothing that may be lost. */
const tellsOf = (text: string, moment: Moment): boolean => {
  const { records, usage } = read(text, moment);
  return records.length + usage.length + happeningsIn(text, moment).length > 0;
};

/** How a note before a question begins, or ends: "greased the hubs, when did I last do them". */
const OPENS =
  /^\W*(?:(?:and|so|oh|ok|okay|well|right|just|now|also|finally|hi|hey|hello)\W+)*(?:i|we|he|she|they|ive|did|had|got|put|cut|ran|\w+ed)\b|[.!;\n]\s*$/i;

/** "It was Friday, the fourth": no fourth of three that were shown. */
const ofWhatWasShown = (ruled: Intent, { last, shown, replyTo }: Scene): Intent => {
  if (ruled.is !== "correct" || ruled.correction.target.by !== "number") return ruled;
  const most = Math.max(...[last, shown, replyTo].map((showing) => showing?.records.length ?? 0));
  return most > 0 && ruled.correction.target.numbers.some((number) => number > most) ? TELLS : ruled;
};

/** As `understand`, by judges that may be others. */
export const understandBy = (judges: TalkJudges, text: string, moment: Moment, scene: Scene): Intent => {
  const ruled = ofWhatWasShown(understoodByRules(text, moment, scene), scene);
  if (SETTLED.has(ruled.is) || text.length > LONG || split(text).length > MANY) return ruled;
  const meant = meantIn(text, moment, scene);
  const kindOf = (said: string, taken: Intent) =>
    judges.message(messageSigns({ text: said, moment, meant, ruled: taken }));
  const kind = kindOf(text, ruled);
  if (OTHERWISE.has(ruled.is))
    return meant === undefined || kind.correction <= CORRECTED_FOR_SURE
      ? ruled
      : putRight(ruled, { kind, tells: false }, meant, text, moment, judges);
  const asks = ASKS.has(ruled.is);
  const found = !text.trimEnd().endsWith("?") && tellsOf(text, moment);
  const tells = !asks && found;
  const openly = asks || ASKING.test(text) ? ASKED : ASKED_IN_OTHER_WORDS;
  const enough = tells ? ASKED_FOR_SURE : found ? ASKED_IN_OTHER_WORDS : openly;
  if (kind.question > enough && kind.question > kind.correction) {
    const apart =
      ruled.rest === null || (OPENS.test(ruled.rest) && kindOf(ruled.rest, TELLS).question < ASKED);
    return asks && apart ? ruled : askedWhole(text, moment, scene);
  }
  const nothingSaid = ruled.is === "correct" && scene.last === null && scene.replyTo === null;
  const heard = (asks && kind.question <= enough) || (nothingSaid && found) ? TELLS : ruled;
  return meant === undefined ? heard : putRight(heard, { kind, tells }, meant, text, moment, judges);
};

/**
 * What a message means here: a note, a question, a correction, a word on what was shown, or something else to do. Rules
 * propose; judges learnt from messages of which it is known what they are settle it.
 */
export const understand = (text: string, moment: Moment, scene: Scene): Intent =>
  understandBy(LEARNT_TALK, text, moment, scene);
