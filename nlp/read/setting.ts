import type { ComponentId } from "../../shared/vocabulary.ts";
import type { ComponentRef } from "../lexicon/components.ts";
import type { Ruled } from "./by-rules.ts";
import type { Deed } from "./deed.ts";
import type { Ground } from "./ground.ts";
import { withGuesses } from "./guesses.ts";
import type { Made } from "./made.ts";
import { mentionsIn, type Topic } from "./topics.ts";
import { wordSorts } from "./word-sorts.ts";

/** Where a deed stands among those of one record, and the last of them before it. */
export type Standing = {
  readonly place: "only" | "first" | "middle" | "last" | "prep";
  readonly after: Deed | undefined;
};

/** What the judges look at: the note as recognised, and what the rules alone would make of it. */
export type Setting = Ground & {
  /** Everything named as a thing, in order. */
  readonly named: readonly ComponentRef[];
  /** What sort of word each token is, as one letter. */
  readonly sorts: readonly string[];
  readonly ruled: readonly Made[];
  /** The topic of each token by the rules; undefined before the first. */
  readonly topicAt: readonly (Topic | undefined)[];
  /** The record that each deed is part of by the rules. */
  readonly recordOf: ReadonlyMap<Deed, Made>;
  /** The records with a deed that the rules make of each component, in order. */
  readonly worksOn: ReadonlyMap<ComponentId, readonly Made[]>;
  /** Where each deed stands in that record. */
  readonly standings: ReadonlyMap<Deed, Standing>;
  /** The record without a deed that the rules read from a clause, by the number of the clause. */
  readonly bareIn: ReadonlyMap<number, Made>;
};

const bareRecords = ({ index }: Ground, ruled: readonly Made[]): Map<number, Made> => {
  const bare = new Map<number, Made>();
  for (const made of ruled)
    if (made.event === null)
      for (const span of [made.fault, ...(made.judged?.spans ?? [])])
        for (let at = span?.from ?? 0; at < (span?.to ?? 0); at++) bare.set(index[at] ?? 0, made);
  return bare;
};

const worksByComponent = (ruled: readonly Made[]): Map<ComponentId, Made[]> => {
  const works = new Map<ComponentId, Made[]>();
  for (const made of ruled) {
    if (made.event === null) continue;
    const { component } = made.told.topic;
    const known = works.get(component) ?? [];
    works.set(component, known);
    known.push(made);
  }
  return works;
};

const placeOf = (nth: number, count: number): Standing["place"] =>
  count <= 1 ? "only" : nth === 0 ? "first" : nth === count - 1 ? "last" : "middle";

const standingsIn = (ruled: readonly Made[]): Map<Deed, Standing> => {
  const standings = new Map<Deed, Standing>();
  for (const { event } of ruled) {
    const all = event?.deeds ?? [];
    const main = all.filter((deed) => deed.sense !== "prep");
    for (const deed of all)
      if (deed.sense === "prep")
        standings.set(deed, { place: main.length <= 1 ? "only" : "prep", after: undefined });
    for (const [nth, deed] of main.entries())
      standings.set(deed, { place: placeOf(nth, main.length), after: main[nth - 1] });
  }
  return standings;
};

const topicTokens = (topics: readonly Topic[], length: number): (Topic | undefined)[] => {
  const at: (Topic | undefined)[] = Array.from({ length }, () => undefined);
  for (const topic of topics)
    for (const { from, to } of topic.stretches) for (let token = from; token < to; token++) at[token] = topic;
  return at;
};

export const settingOf = (ground: Ground, { topics, records }: Ruled): Setting => ({
  ...ground,
  named: withGuesses(ground.scan, mentionsIn(ground)),
  sorts: wordSorts(ground),
  ruled: records,
  topicAt: topicTokens(topics, ground.scan.tokens.length),
  bareIn: bareRecords(ground, records),
  recordOf: new Map(
    records.flatMap((made) => (made.event?.deeds ?? []).map((deed) => [deed, made] as const)),
  ),
  worksOn: worksByComponent(records),
  standings: standingsIn(records),
});
