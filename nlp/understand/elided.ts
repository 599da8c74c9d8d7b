import { Temporal } from "temporal-polyfill";
import type { Purpose } from "../../shared/memory/intent.ts";
import type { Scene, Shown } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { spelledOut } from "../ask/spelled-out.ts";
import { read } from "../read/index.ts";
import { againElsewhere } from "./again-elsewhere.ts";
import { respelled } from "./respell.ts";
import { TELLS } from "./tells.ts";

type Tell = Extract<Purpose, { is: "tell" }>;

const DAYS = 14;
const MOST_WORDS = 30;

const isRecent = (at: string, moment: Moment): boolean =>
  Temporal.Instant.from(at).until(Temporal.Instant.from(moment.said)).total("hours") <= 24 * DAYS;

/** The one thing that the last note, or the message replied to, was about. */
const thingOf = (moment: Moment, scene: Scene): Shown | undefined => {
  const showing = scene.replyTo ?? scene.last;
  if (showing === null || (scene.replyTo === null && !isRecent(showing.at, moment))) return undefined;
  const [first, ...others] = showing.records;
  return others.every(({ fields }) => fields.component === first?.fields.component) ? first : undefined;
};

/** "Did the passenger side too": the work of the last note at another place. */
export const elsewhere = (text: string, moment: Moment, scene: Scene): Tell | undefined => {
  const showing = scene.replyTo ?? scene.last;
  if (showing === null || (scene.replyTo === null && !isRecent(showing.at, moment))) return undefined;
  const again = againElsewhere(text, showing);
  return again === undefined ? undefined : { ...TELLS, again };
};

/** "Need tail lite bulbs n anothr fuse", written out where the reader finds nothing in it as it stands. */
const writtenOut = (text: string, moment: Moment): string | null => {
  const spelled = spelledOut(text);
  const finds = (words: string): boolean => read(words, moment).records.length > 0;
  return spelled !== text && !finds(text) && finds(spelled) ? spelled : null;
};

/** A note in words that mean something only here: it points back, or names its thing loosely. */
export const elided = (text: string, words: string, moment: Moment, scene: Scene): Tell => {
  if (words.split(" ").length > MOST_WORDS) return TELLS;
  const thing = thingOf(moment, scene);
  const spelled = respelled(text, thing?.fields.component ?? null, moment);
  return { ...TELLS, read: spelled ?? writtenOut(text, moment) };
};
