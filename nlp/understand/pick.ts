import type { Purpose } from "../../shared/memory/intent.ts";
import { comparePlaces } from "../../shared/memory/place.ts";
import type { Topic } from "../../shared/memory/query.ts";
import type { Scene, Shown } from "../../shared/memory/scene.ts";
import { shareAny, stemOf, tellingStems } from "../../shared/memory/words.ts";
import { topicOf } from "../ask/topic.ts";

const ORDER = ["first", "second", "third", "fourth", "fifth"];
const NUMBER = /^(?:the |number |nr |no |option )*(first|second|third|fourth|fifth|last|[1-5])(?: one)?$/;
const ALL = /^(?:both|all|both of them|all of them|them all|each|every one|the lot|both please)$/;
const NONE =
  /^(?:no |nope )?(?:neither|none|none of them|new|new work|its new|a new one|something new|new one|something else|its new work|thats new)(?: of them)?$/;
/** Work named without these is told, not pointed at. */
const POINTS = /^(?:the|that|those|my)\b/;
const MOST_WORDS = 8;
/** "So that dump valve holding or not": asked of one, and none pointed at. */
const ASKS = /\b(?:or not|still|hold\w*|how|what|when|did|does|has|have|ever)\b/;

const nameFits = ({ named, actions }: Topic, { fields }: Shown): boolean => {
  const [best] = named;
  const likely = named.filter(({ sure }) => sure >= Math.min(0.6, best?.sure ?? 1));
  if (best !== undefined && !likely.some(({ component }) => component === fields.component)) return false;
  return actions.length === 0 || (fields.action !== null && actions.includes(fields.action));
};

const fits = (words: string, topic: Topic, shown: Shown): boolean => {
  const { fields } = shown;
  if (!nameFits(topic, shown) || comparePlaces(topic.where.join(" "), fields.where) === "different")
    return false;
  const told = new Set([...tellingStems([fields.where ?? "", ...fields.materials].join(" "))].map(stemOf));
  const says = topic.named.length + topic.actions.length > 0;
  return says || shareAny([...tellingStems(words)].map(stemOf), told);
};

const numbered = (word: string, candidates: readonly Shown[]): Shown | undefined => {
  if (word === "last") return candidates.at(-1);
  const at = ORDER.indexOf(word);
  return candidates[at >= 0 ? at : Number(word) - 1];
};

/** An answer in words to "which one do you mean?". */
export const pickIn = (words: string, { pending }: Scene): Purpose | undefined => {
  if (pending?.is !== "which-record" || words.split(" ").length > MOST_WORDS) return undefined;
  const { candidates } = pending;
  if (NONE.test(words)) return { is: "pick", records: [] };
  if (ALL.test(words)) return { is: "pick", records: candidates.map(({ id }) => id) };
  const number = NUMBER.exec(words)?.[1];
  const topic = topicOf(words);
  if ((topic.actions.length > 0 && !POINTS.test(words)) || ASKS.test(words)) return undefined;
  const meant =
    number === undefined
      ? candidates.filter((shown) => fits(words, topic, shown))
      : [numbered(number, candidates)].filter((shown) => shown !== undefined);
  return meant.length === 1 ? { is: "pick", records: meant.map(({ id }) => id) } : undefined;
};
