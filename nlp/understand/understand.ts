import type { Intent } from "../../shared/memory/intent.ts";
import type { Scene } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { offerScene, weighedChanges } from "../correct/weighed.ts";
import { scan } from "../read/scan.ts";
import { askedWhole, understoodByRules } from "./by-rules.ts";
import type { Change } from "../../shared/memory/correction.ts";
import { LEARNT_TALK, type MessageKind, type TalkJudges } from "../judges/talk.ts";
import { type Meant, meantIn } from "./lately.ts";
import { messageSigns } from "./message-signs.ts";

/** What only rules settle. */
const SETTLED: ReadonlySet<Intent["is"]> = new Set([
  "pick",
  "undo",
  "redo",
  "set",
  "help",
  "show",
  "leave",
  "home",
  "chat",
  "tick",
]);

const LONG = 600;
const EVEN = 0.5;
const ENOUGH = Number(process.env['EN'] ?? 0.3);
const HARDLY = Number(process.env['HA'] ?? 0.2);

/** As `understand`, by judges that may be others. */
export const understandBy = (
  judges: TalkJudges,
  text: string,
  moment: Moment,
  scene: Scene,
): Intent => {
  const ruled = understoodByRules(text, moment, scene);
  if (SETTLED.has(ruled.is) || text.length > LONG) return ruled;
  const meant = meantIn(text, moment, scene);
  const lately = meant === undefined ? null : { fields: meant.shown.fields, minutes: meant.minutes };
  const offers = meant?.offers ?? [];
  const kind = judges.message(messageSigns({ text, moment, lately, offers, ruled }));
  if (kind.question > QUESTION && kind.question > kind.correction)
    return ASKS.has(ruled.is) ? ruled : askedWhole(text, moment, scene);
  const heard = ASKS.has(ruled.is) && kind.question < HARDLY ? tell() : ruled;
  return meant === undefined ? heard : settled(heard, kind, meant, text, moment, judges);
};

const ASKS: ReadonlySet<Intent["is"]> = new Set(["ask", "decide", "ready"]);
const QUESTION = Number(process.env["QU"] ?? 0.5);

const tell = (): Intent => ({ is: "tell", read: null, again: null, rest: null });

const settled = (
  ruled: Intent,
  kind: Readonly<Record<MessageKind, number>>,
  meant: Meant,
  text: string,
  moment: Moment,
  judges: TalkJudges,
): Intent => {
  const { id: record, fields } = meant.shown;
  const target = { by: "record", record } as const;
  const corrects = (changes: readonly Change[]): Intent => ({
    is: "correct",
    correction: { target, changes, not: {} },
    announced: false,
    rest: null,
  });
  const older = ruled.is === "correct" && ruled.correction.target.by !== "last";
  if (kind.removal > EVEN && kind.removal > kind.correction)
    return older || (ruled.is === "correct" && ruled.correction.changes[0]?.change === "remove")
      ? ruled
      : corrects([{ change: "remove" }]);
  if (older) return ruled;
  if (kind.correction > ENOUGH) {
    const before = ruled.is === "correct" ? ruled.correction.changes : [];
    const bench = offerScene(scan(text, moment).tokens, meant.offers, fields, before);
    const changes = weighedChanges(bench, judges.offer);
    if (changes.length > 0) return corrects(changes);
  }
  return ruled.is === "correct" && kind.correction + kind.removal < HARDLY ? tell() : ruled;
};

/** What a message means here: a note, a question, a correction, a word on what was shown, or something else to do. */
export const understand = (text: string, moment: Moment, scene: Scene): Intent =>
  understandBy(LEARNT_TALK, text, moment, scene);
