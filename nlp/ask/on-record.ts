import { actionFit, stuffFits } from "../../shared/memory/fit.ts";
import { comparePlaces } from "../../shared/memory/place.ts";
import type { Query, Topic } from "../../shared/memory/query.ts";
import type { Shown } from "../../shared/memory/scene.ts";
import { stemOf, tellingStems } from "../../shared/memory/words.ts";
import { type ComponentId, systemOf } from "../../shared/vocabulary.ts";
import type { Described } from "../read/described.ts";
import { sizeOf } from "../read/sizes.ts";
import { MAY_BE_OF_ALL } from "./of-all.ts";

/** A thing that a question may be about: named in it, on record, or both. */
export type Candidate = {
  readonly component: ComponentId;
  /** How surely the question names it, from 0 to 1; 0 where it doesn't. */
  readonly sure: number;
  readonly records: readonly Shown[];
};

/** What there is to tell by which thing a question is about, beside its own words for things. */
export type Heard = {
  /** What was told before, newest first. */
  readonly known: readonly Shown[];
  /** What the question before was about, else what was told of last. */
  readonly before: ComponentId | undefined;
  /** What the words of the question speak of. */
  readonly spoken: Described;
  /** The question names nothing itself, and means what the one before was about. */
  readonly carried: boolean;
};

type About = Extract<Query, { readonly topic: Topic }>;

/** As many of the things that a question names are looked at. */
const MOST = 8;

const candidatesOf = ({ topic }: About, { known }: Heard): readonly Candidate[] => {
  const named = new Map(topic.named.slice(0, MOST).map(({ component, sure }) => [component, sure]));
  const components = new Set([...named.keys(), ...known.map(({ fields }) => fields.component)]);
  return [...components].map((component) => ({
    component,
    sure: named.get(component) ?? 0,
    records: known.filter(({ fields }) => fields.component === component),
  }));
};

/** Whether a question is about one thing, as far as it says. */
const isOfOne = (query: Query): query is About =>
  "topic" in query &&
  query.topic.systems.length === 0 &&
  (query.topic.named.length > 0 || (!MAY_BE_OF_ALL.has(query.ask) && query.topic.words.length > 0));

const strengthOf = (sure: number): string =>
  sure >= 1 ? "name" : sure >= 0.8 ? "nick" : sure >= 0.6 ? "weak" : sure > 0 ? "claim" : "no";

const standingOf = (mine: number, all: readonly number[]): string => {
  const most = Math.max(...all);
  if (most <= 0) return "none";
  if (mine < most) return mine <= 0 ? "nothing" : `behind ${mine < most / 2 ? "far" : "near"}`;
  return all.filter((each) => each === most).length > 1 ? "tied" : "ahead";
};

const placed = ({ where }: Topic, records: readonly Shown[]): string => {
  if (where.length === 0) return "unsaid";
  const likenesses = records.map(({ fields }) => comparePlaces(where.join(" "), fields.where));
  return likenesses.includes("same")
    ? "same"
    : likenesses.every((each) => each === "different")
      ? "other"
      : "open";
};

const SPOKEN = [0.85, 0.6, 0.35, 0.15, 0.05] as const;
const spokenSize = (sure: number): string => String(SPOKEN.filter((least) => sure >= least).length);

/** How likely the words speak of a thing, and of others. */
const spokenSigns = (
  component: ComponentId,
  candidates: readonly Candidate[],
  spoken: Described,
): string[] => {
  const mine = spoken.get(component) ?? 0;
  const most = Math.max(...candidates.map((each) => spoken.get(each.component) ?? 0));
  const elsewhere = Math.max(0, ...spoken.values()) > most ? "elsewhere" : "here";
  const rank = mine >= most ? "first" : mine >= most / 2 ? "near" : "far";
  const size = spokenSize(mine);
  return [
    `spoken=${size}`,
    `spoken=${size} most=${spokenSize(most)}`,
    `spoken=${size} ${rank} ${elsewhere}`,
    `spoken rank=${rank} ${elsewhere}`,
  ];
};

type Rated = { readonly candidate: Candidate; readonly told: number; readonly shared: number };

/** The signs, as names, of each thing that a question may be about: how it is named, and what was told of it. */
const signsOf = (query: About, candidates: readonly Candidate[], { before, spoken }: Heard): string[][] => {
  const { topic } = query;
  const asked = [
    ...new Set([...topic.all, ...topic.materials.flatMap((each) => each.split(" "))].map(stemOf)),
  ];
  const stems = candidates.map(
    ({ records }) => new Set(records.flatMap(({ words }) => [...tellingStems(words ?? "")])),
  );
  const rare = (stem: string): number => 1 / Math.max(1, stems.filter((told) => told.has(stem)).length);
  const rated = candidates.map((candidate, at): Rated => {
    const shared = asked.filter((stem) => stems[at]?.has(stem) === true);
    return { candidate, shared: shared.length, told: shared.reduce((sum, stem) => sum + rare(stem), 0) };
  });
  const surest = Math.max(...candidates.map(({ sure }) => sure));
  const newest = candidates
    .map(({ records }) => Math.max(0, ...records.map(({ id }) => id)))
    .toSorted((a, b) => b - a);
  return rated.map(({ candidate, told, shared }) => {
    const { component, sure, records } = candidate;
    const strength = strengthOf(sure);
    const lead =
      sure === 0 ? "no" : sure === surest ? "first" : `behind ${sizeOf(Math.round((surest - sure) * 10))}`;
    const wording = standingOf(
      told,
      rated.map((each) => each.told),
    );
    const repairs = records.filter(({ fields }) => fields.kind === "repair").length;
    const plain = [
      `strength=${strength}`,
      `lead=${lead}`,
      `wording=${wording}`,
      `alone=${sizeOf(Math.floor(told * 2))}`,
      `shared=${sizeOf(shared)} of ${sizeOf(asked.length)}`,
      `on record=${sizeOf(records.length)}`,
      `repairs=${sizeOf(repairs)}`,
      `place=${placed(topic, records)}`,
      `deed=${topic.actions.length === 0 ? "unsaid" : String(records.some((record) => actionFit(topic, record) === 2))}`,
      `stuff=${topic.materials.length === 0 ? "unsaid" : String(records.some((record) => stuffFits(topic, record)))}`,
      `rank=${sizeOf(newest.indexOf(Math.max(0, ...records.map(({ id }) => id))))}`,
      `before=${before === undefined ? "none" : String(before === component)}`,
      ...spokenSigns(component, candidates, spoken),
    ];
    const surestOne = `best=${strengthOf(surest)}`;
    return [
      ...plain,
      ...plain.map((sign) => `${strength} ${sign}`),
      ...plain.map((sign) => `${strength} ${wording} ${sign}`),
      ...plain.map((sign) => `${surestOne} ${strength} ${sign}`),
      `${query.ask} ${strength} ${wording}`,
      `${query.ask} repairs=${sizeOf(repairs)}`,
      `id=${component} ${strength}`,
      `system=${systemOf(component)} ${strength}`,
    ];
  });
};

export type Rate = (
  signs: readonly (readonly string[])[],
  candidates: readonly Candidate[],
) => readonly number[];

/** From here on the thing is the one that the judge takes for it. */
const ENOUGH = 0.5;
/** Named as well, and only looked at where nothing is on record of the one asked about. */
const BESIDE = 0.65;

/** From here on, words that name nothing speak of one thing, and not of the rig. */
const SPOKEN_OF_ONE = 0.7;

/** "What has that piece of cloth over the pushing room cost": money and lists of a thing that is on record, and not named. */
const ofThingSpokenOf = (query: Query, { known, spoken }: Heard): Query => {
  if (!("topic" in query) || !MAY_BE_OF_ALL.has(query.ask)) return query;
  const { topic } = query;
  if (topic.named.length + topic.systems.length > 0 || topic.words.length === 0) return query;
  const meant = known.find(({ fields }) => (spoken.get(fields.component) ?? 0) >= SPOKEN_OF_ONE);
  return meant === undefined
    ? query
    : { ...query, topic: { ...topic, named: [{ component: meant.fields.component, sure: 1 }], words: [] } };
};

/** Whoever asks so takes it for known that there was work: a thing without any is not the one meant. */
const TAKES_WORK_FOR_KNOWN: ReadonlySet<Query["ask"]> = new Set(["last", "longest", "holding", "count"]);
/** So surely named, a thing is only looked at where nothing is on record of all the others. */
const ONLY_ELSE = 0.2;
/** The least share by which the judge holds a thing for the one meant. */
const LEAST_ELSE = 0.02;

/** Something in the words, or in what is named, must point at it: a neighbour of the thing named, or what they speak of. */
const isPointedAt = (component: ComponentId, { topic }: About, { spoken }: Heard): boolean =>
  topic.named.length === 0 ||
  likeliestOf(spoken).has(component) ||
  topic.named.some((each) => systemOf(each.component) === systemOf(component));

/** As many of the things that words may speak of are looked at. */
const LIKELIEST = 4;
const likeliestOf = (spoken: Described): ReadonlySet<ComponentId> =>
  new Set(
    [...spoken]
      .toSorted(([, a], [, b]) => b - a)
      .slice(0, LIKELIEST)
      .map(([component]) => component),
  );

/** So likely the words speak of what they name. */
const SPEAK_OF_IT = 0.9;
/** "When did I last grease the tongue jack": called by its name, and the words speak of nothing else. */
const isPlainlyNamed = ({ topic }: About, { spoken }: Heard): boolean => {
  const [named] = topic.named;
  return named !== undefined && named.sure >= 1 && (spoken.get(named.component) ?? 0) >= SPEAK_OF_IT;
};

/** With the likeliest thing that there is work on behind all that is named, where who asks knows of work. */
const orElse = (
  query: About,
  candidates: readonly Candidate[],
  parts: readonly number[],
  heard: Heard,
): About => {
  if (!TAKES_WORK_FOR_KNOWN.has(query.ask) || isPlainlyNamed(query, heard)) return query;
  const [likeliest] = candidates
    .map(({ component, records }, at) => ({ component, share: parts[at] ?? 0, known: records.length > 0 }))
    .filter(({ known, share }) => known && share >= LEAST_ELSE)
    .filter(({ component }) => isPointedAt(component, query, heard))
    .toSorted((a, b) => b.share - a.share);
  if (likeliest === undefined) return query;
  const { named } = query.topic;
  if (named.some(({ component }) => component === likeliest.component)) return query;
  return {
    ...query,
    topic: { ...query.topic, named: [...named, { component: likeliest.component, sure: ONLY_ELSE }] },
  };
};

/** The question with the thing first that it is about, as far as its words and what is on record tell. */
export const onRecord = (query: Query, heard: Heard, rate: Rate): Query => {
  if (!isOfOne(query)) return ofThingSpokenOf(query, heard);
  if (heard.carried) return query;
  const candidates = candidatesOf(query, heard);
  if (candidates.length < 2) return query;
  const parts = rate(signsOf(query, candidates, heard), candidates);
  const best = candidates.reduce((top, _, at) => ((parts[at] ?? 0) > (parts[top] ?? 0) ? at : top), 0);
  const [chosen, share] = [candidates[best], parts[best] ?? 0];
  if (chosen === undefined || share < ENOUGH || chosen.component === query.topic.named[0]?.component)
    return orElse(query, candidates, parts, heard);
  const { named } = query.topic;
  const others = named.filter(({ component }) => component !== chosen.component);
  const topic: Topic = {
    ...query.topic,
    named: [
      { component: chosen.component, sure: 1 },
      ...others.map((each) => ({ ...each, sure: Math.min(each.sure, BESIDE) })),
    ],
  };
  return { ...query, topic };
};
