import { EMPTY_TOPIC, OTHERS_DID, SPEAKER_DID, type Topic } from "../../shared/memory/query.ts";
import { plainWords } from "../../shared/memory/words.ts";
import type { Asked } from "./asked.ts";
import { countsFailures } from "./kinds.ts";
import { isCostOfRig } from "./rig-cost.ts";
import { onlyWantsToKnow } from "./wants-to-know.ts";

/** Questions that may well be about the whole rig. */
export const MAY_BE_OF_ALL: ReadonlySet<Asked["kind"]> = new Set([
  "open",
  "buy",
  "use",
  "worst",
  "cost",
  "list",
  "due",
]);
/** From here on, what a question seems to name is only its way of saying: from the first where it names nothing surely. */
const OF_ALL = 0.5;
export const OF_ALL_FOR_SURE = 0.8;
const SURELY = 0.8;

/** "The very first job I told you about": the work, not the words. */
const FIRST_JOB = /\bfirst (?:ever )?(?:job|thing|work|fix|repair|task|entry|record)\b/;

/** "What else have I let slide": what was not done. */
const NEGLECTED =
  /\b(?:let(?:ting)? (?:\w+ )?(?:slide|go by|slip)|(?:fallen|fell|slipped|gone) through the cracks|(?:on|onto) the back burner|neglect(?:ed|ing)|(?:been )?put(?:ting)? off|swept under the (?:rug|carpet))\b/;

/** "Price?", of the thing before. */
const JUST_PRICE = /^(?:(?:and|so|the|what|whats) )*price$/;

/** Kinds that a long way round to "how many times did it fail" is taken for. */
const MAY_HIDE_A_COUNT: ReadonlySet<Asked["kind"]> = new Set(["decide", "holding", "last"]);
const HOW_MANY_TIMES = /\bhow many (?:times|goes)\b/;

/** "The new bearings on the kerb side, were they any chop?" */
const ANY_GOOD =
  /\b(?:(?:was|were|is|are) (?:it|they|that|he|she|those) )?(?:any (?:chop|cop|good|use)|up to (?:scratch|snuff|much)|worth a damn|much chop|much cop)$/;

/** What words plainly ask for, whatever else was heard in them. */
export const asksPlainlyFor = (asked: Asked, words: string): Asked => {
  if (asked.kind === "said" && FIRST_JOB.test(words))
    return { kind: "last", focus: "what", rule: "first-job" };
  if (asked.kind === "cost" && JUST_PRICE.test(words)) return { kind: "last", focus: "cost", rule: "price" };
  if (asked.kind === "list" && NEGLECTED.test(words)) return { kind: "open", rule: "neglected" };
  if (asked.kind === "last" && ANY_GOOD.test(words)) return { kind: "holding", rule: "any-good" };
  const counts = asked.kind === "count" || (MAY_HIDE_A_COUNT.has(asked.kind) && HOW_MANY_TIMES.test(words));
  if (counts && countsFailures(words)) return { kind: "count", of: "failures", rule: "times-failed" };
  return asked;
};

/** Words with a capital amid a sentence: people, towns. */
const namesIn = (text: string): ReadonlySet<string> =>
  new Set([...text.matchAll(/(?<=[\p{L},] )\p{Lu}\p{Ll}{2,}/gu)].flatMap(([name]) => plainWords(name)));

/** "My brother says I only sit about, so what did I get done": kinds that somebody may want to know who did nothing. */
const ONLY_TOLD_TO: ReadonlySet<Asked["kind"]> = new Set(["cost", "list", "count", "longest"]);

const payee = ({ who }: Topic, { kind }: Asked, words: string): string | null => {
  const mayAsk = ONLY_TOLD_TO.has(kind) && who !== null && who !== SPEAKER_DID && who !== OTHERS_DID;
  return mayAsk && onlyWantsToKnow(who, words) ? null : who;
};

/** What a question names, where it is about anything less than the whole rig. */
export const narrowed = (
  said: Topic,
  asked: Asked,
  ofAll: number,
  { words, text }: { readonly words: string; readonly text: string },
): Topic => {
  const topic = { ...said, who: payee(said, asked, words) };
  const sure = topic.named.some((each) => each.sure >= SURELY) || topic.systems.length > 0;
  const may = MAY_BE_OF_ALL.has(asked.kind) || (asked.kind === "last" && FIRST_JOB.test(words));
  const all =
    (may && ofAll > (sure ? OF_ALL_FOR_SURE : OF_ALL)) || (asked.kind === "cost" && isCostOfRig(words));
  const people = namesIn(text);
  return all
    ? {
        ...EMPTY_TOPIC,
        who: topic.who,
        systems: topic.systems,
        where: asked.kind === "list" ? topic.where : [],
        words: topic.words.filter((word) => people.has(word)),
      }
    : topic;
};
