import { COMPONENTS } from "../../shared/vocabulary.ts";
import type { Candidate as Thing } from "../ask/on-record.ts";
import type { Candidate } from "../correct/which-signs.ts";
import { bothWays } from "../read/both-ways.ts";
import type { Described } from "../read/described.ts";
import { type LearntLayers, layered, layering } from "../read/layered.ts";
import { chances, type Learnt, shares, weighing } from "../read/linear.ts";
import asking from "./asking.json" with { type: "json" };
import correcting from "./correcting.json" with { type: "json" };
import known from "./known.json" with { type: "json" };
import messages from "./messages.json" with { type: "json" };
import speaking from "./speaking.json" with { type: "json" };

export const MESSAGES = ["question", "correction", "removal", "word"] as const;
export type MessageKind = (typeof MESSAGES)[number];
export const OFFERED = ["in", "also", "drop"] as const;
export type Offered = (typeof OFFERED)[number];

/** What a question asks for: the kind, and what of it where a kind has several. */
export const ASKS = [
  "last what",
  "last when",
  "last how-long-ago",
  "last materials",
  "last who",
  "last why",
  "last cost",
  "last state",
  "last place",
  "last cure",
  "list",
  "ever",
  "count failures",
  "count work",
  "holding",
  "open",
  "buy",
  "cost all",
  "cost dearest",
  "longest",
  "longest shortest",
  "said",
  "use",
  "due",
  "worst",
  "decide",
  "ready",
] as const;
export type AskedFor = (typeof ASKS)[number];

export const ABOUT = ["all"] as const;

/** What was learnt from messages of which it is known what they are; chances go from 0 to 1. */
export type TalkJudges = {
  /** What a message is; low in all for a note or small talk. */
  readonly message: (signs: readonly string[]) => Readonly<Record<MessageKind, number>>;
  /** Whether a value named is the one that the record should have, instead or besides, or the one that it should not. */
  readonly offer: (signs: readonly string[]) => Readonly<Record<Offered, number>>;
  /** Which of several records a message puts right, if any; adds up to 1. */
  readonly which: (
    signs: readonly (readonly string[])[],
    candidates: readonly Candidate[],
  ) => readonly number[];
  /** What a question asks for. */
  readonly ask: (signs: readonly string[]) => { readonly asks: AskedFor; readonly sure: number };
  /** Which of several things that a question names it is about; adds up to 1. */
  readonly thing: (signs: readonly (readonly string[])[]) => readonly number[];
  /** Which things a question speaks of, by whatever words. */
  readonly spoken: (signs: readonly string[]) => Described;
  /** Which of the things that it names or that are on record a question is about; adds up to 1. */
  readonly known: (signs: readonly (readonly string[])[], things: readonly Thing[]) => readonly number[];
  /** Whether a question is about the whole rig, and names no thing or work. */
  readonly ofAll: (signs: readonly string[]) => number;
};

export type LearntTalk = {
  readonly message: LearntLayers;
  /** The same without a layer between. */
  readonly plainly: Learnt;
  readonly offer: LearntLayers;
  readonly which: Learnt;
  readonly ask: LearntLayers;
  readonly about: Learnt;
  readonly thing: Learnt;
  /** Learnt from several starts; the mean of all. */
  readonly spoken: readonly LearntLayers[];
  readonly known: Learnt;
};

const named = <T extends string>(names: readonly T[], values: readonly number[]): Record<T, number> =>
  Object.fromEntries(names.map((name, at) => [name, values[at] ?? 0])) as Record<T, number>;

/** What words speak of, by the mean of what was learnt. */
export const spokenBy = (learnt: readonly LearntLayers[]): TalkJudges["spoken"] => {
  const all = learnt.map((each) => layering(each, COMPONENTS));
  return (signs) => {
    const rated = all.map((layers) => layered(layers, signs));
    const mean = (at: number): number => rated.reduce((sum, each) => sum + (each[at] ?? 0), 0) / all.length;
    return new Map(COMPONENTS.map((component, at) => [component, mean(at)]));
  };
};

export const talkJudgesBy = (tables: LearntTalk): TalkJudges => {
  const message = bothWays(tables.message, tables.plainly, MESSAGES);
  const offer = layering(tables.offer, OFFERED);
  const which = weighing(tables.which, ["right"]);
  const ask = layering(tables.ask, ASKS);
  const about = weighing(tables.about, ABOUT);
  const thing = weighing(tables.thing, ["right"]);
  const known = weighing(tables.known, ["right"]);
  return {
    ask: (signs) => {
      const rated = layered(ask, signs);
      const sure = Math.max(...rated);
      return { asks: ASKS[rated.indexOf(sure)] ?? "last what", sure };
    },
    ofAll: (signs) => chances(about, signs)[0] ?? 0,
    message: (signs) => named(MESSAGES, message(signs)),
    offer: (signs) => named(OFFERED, layered(offer, signs)),
    which: (signs) => shares(which, signs),
    thing: (signs) => shares(thing, signs),
    spoken: spokenBy(tables.spoken),
    known: (signs) => shares(known, signs),
  };
};

export const LEARNT_TALK: TalkJudges = talkJudgesBy({
  ...messages,
  ...asking,
  ...correcting,
  ...speaking,
  ...known,
});
