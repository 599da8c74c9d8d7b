import { Temporal } from "temporal-polyfill";
import type { Purpose } from "../../shared/memory/intent.ts";
import type { Scene, Shown } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { topicOf } from "../ask/topic.ts";

import { respelled } from "./respell.ts";

type Tell = Extract<Purpose, { is: "tell" }>;

const TELL: Tell = { is: "tell", read: null, again: null };

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

const AGAIN =
  /^(?:(?:and|then|also|so|ok|now|just) )*(?:(?:i |we )?(?:did|have done|also did|went and did|got) |same (?:again |thing |job |story |deal )?(?:on|for|with|to|at) |(?:and |then )?ditto (?:on|for|with|at)? ?|repeated (?:it|that) (?:on|at) )(?:the |my |it on the |it to the |that on the )?(.{2,40}?)(?: one)?(?: too| as well| also| the same| the same way| likewise| while i was at it| while there)?(?: today| yesterday)?$/;

const SAME = /\b(?:too|as well|also|the same|likewise|same|ditto|other|while i was)\b/;

const WORKLESS: ReadonlySet<string> = new Set(["fault", "todo"]);

/** "Did the passenger side too": the work of the last note at another place. */
const againAt = (words: string, thing: Shown): Tell | undefined => {
  const where = AGAIN.exec(words)?.[1];
  if (where === undefined || !SAME.test(words) || WORKLESS.has(thing.fields.kind)) return undefined;
  const topic = topicOf(where);
  const other = topic.named.length === 0 || topic.named[0]?.component === thing.fields.component;
  const isPlace = topic.where.length > 0 || /\bother\b/.test(where);
  return other && isPlace
    ? { is: "tell", read: null, again: { record: thing.id, where: where.trim() } }
    : undefined;
};

/** A note in words that mean something only here: it points back, or names its thing loosely. */
export const elided = (text: string, words: string, moment: Moment, scene: Scene): Tell => {
  if (words.split(" ").length > MOST_WORDS) return TELL;
  const thing = thingOf(moment, scene);
  const again = thing === undefined ? undefined : againAt(words, thing);
  return again ?? { ...TELL, read: respelled(text, thing?.fields.component ?? null, moment) };
};
