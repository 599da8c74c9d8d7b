import type { Named, Topic } from "../../shared/memory/query.ts";
import { plainWords } from "../../shared/memory/words.ts";
import { systemOf } from "../../shared/vocabulary.ts";
import { sizeOf } from "../read/sizes.ts";
import { deedsIn } from "./deeds.ts";
import { type Mention, mentionsIn } from "./names.ts";

/** As many of the things that a question names as may be the one asked about. */
const MOST = 8;

/** The things that a question may be about, the surest first. */
const thingChoices = (topic: Topic): readonly Named[] => topic.named.slice(0, MOST);

const ASKING: ReadonlySet<string> = new Set(
  "what which when where who why how is are was were did do does has have any anything tell remind show need total".split(
    " ",
  ),
);
const TURNS: ReadonlySet<string> = new Set(
  "and but so because cause since while then or if when that".split(" "),
);

type Laid = {
  readonly words: readonly string[];
  readonly mentions: readonly Mention[];
  readonly asking: readonly number[];
  readonly deeds: readonly number[];
};

const wordAt = ({ words }: Laid, at: number): string => words[at] ?? "^";

const near = (from: number, places: readonly number[]): string => {
  const nearest = places.reduce<number | undefined>(
    (best, place) => (best === undefined || Math.abs(place - from) < Math.abs(best - from) ? place : best),
    undefined,
  );
  if (nearest === undefined) return "none";
  return `${nearest < from ? "after" : "before"} ${sizeOf(Math.abs(nearest - from))}`;
};

/** Whether a turn of the sentence stands between a mention and the asking word before it. */
const turned = (laid: Laid, from: number): string => {
  const asked = laid.asking.findLast((at) => at < from);
  if (asked === undefined) return "unasked";
  return String(laid.words.slice(asked + 1, from).some((word) => TURNS.has(word)));
};

const ofMention = (laid: Laid, mention: Mention, component: Named["component"]): string[] => {
  const { from, to } = mention;
  const { words, mentions } = laid;
  const at = mentions.indexOf(mention);
  const place = at === 0 ? "first" : at === mentions.length - 1 ? "last" : "between";
  const sure = mention.named.find((each) => each.component === component)?.sure ?? 0;
  const strength = sure >= 1 ? "name" : sure >= 0.8 ? "nick" : sure >= 0.6 ? "weak" : "claim";
  const plain = [
    `strength=${strength}`,
    `place=${place}`,
    `long=${sizeOf(to - from)}`,
    `left=${wordAt(laid, from - 1)}`,
    `left2=${wordAt(laid, from - 2)} ${wordAt(laid, from - 1)}`,
    `right=${wordAt(laid, to)}`,
    `asking=${near(from, laid.asking)}`,
    `deed=${near(from, laid.deeds)}`,
    `turned=${turned(laid, from)}`,
    `end=${sizeOf(words.length - to)}`,
    `next=${mentions[at + 1]?.from === to ? "joint" : "apart"}`,
    `before=${mentions[at - 1]?.to === from ? "joint" : "apart"}`,
  ];
  return [
    ...plain,
    ...plain.map((sign) => `${strength} ${sign}`),
    ...plain.map((sign) => `${place} ${sign}`),
    `asking=${near(from, laid.asking)} deed=${near(from, laid.deeds)}`,
  ];
};

const layOut = (text: string): Laid => {
  const words = plainWords(text);
  return {
    words,
    mentions: mentionsIn(words).filter(({ named }) => named.length > 0),
    asking: words.flatMap((word, at) => (ASKING.has(word) ? [at] : [])),
    deeds: deedsIn(words).map(({ from }) => from),
  };
};

/** The signs, as names, of each thing that a question may be about: how it is named, and how near to what is asked. */
const thingSigns = (text: string, choices: readonly Named[]): string[][] => {
  const laid = layOut(text);
  const top = choices[0]?.sure ?? 0;
  return choices.map(({ component, sure }, rank) => {
    const mine = laid.mentions.filter(({ named }) => named.some((each) => each.component === component));
    const mention = mine.at(-1);
    const tied = choices.filter((each) => each.sure === top).length;
    const base = [
      `rank=${sizeOf(rank)}`,
      `rank=${sizeOf(rank)} of=${sizeOf(choices.length)}`,
      `rank=${sizeOf(rank)} tied=${sizeOf(tied)}`,
      `behind=${String(Math.round((top - sure) * 10))}`,
      `sure=${String(Math.round(sure * 10))}`,
      `told=${sizeOf(mine.length)}`,
      `id=${component}`,
      `system=${systemOf(component)}`,
      ...choices.flatMap((other) =>
        other.component === component ? [] : [`${component} beside ${other.component}`],
      ),
    ];
    return mention === undefined ? [...base, "unnamed"] : [...base, ...ofMention(laid, mention, component)];
  });
};

/** From here on the thing is the one that the judge takes for it. */
const ENOUGH = 0.5;
/** Named, and not asked about: only looked at where nothing is on record of what is. */
const BESIDE = 0.65;

/** The topic of a question with the thing asked about first, as the judge weighs the things named. */
export const settled = (
  topic: Topic,
  text: string,
  rate: (signs: readonly (readonly string[])[]) => readonly number[],
): Topic => {
  const choices = thingChoices(topic);
  if (choices.length < 2) return topic;
  const parts = rate(thingSigns(text, choices));
  const best = choices.reduce((top, _, at) => ((parts[at] ?? 0) > (parts[top] ?? 0) ? at : top), 0);
  const [chosen, share] = [choices[best], parts[best] ?? 0];
  if (chosen === undefined || share < ENOUGH) return topic;
  const first = { ...chosen, sure: Math.max(chosen.sure, choices[0]?.sure ?? 0) };
  const others = topic.named.filter((each) => each !== chosen);
  return {
    ...topic,
    named: [first, ...others.map((each) => ({ ...each, sure: Math.min(each.sure, BESIDE) }))],
  };
};
