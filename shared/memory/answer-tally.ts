import type { KeptRecord } from "../history.ts";
import type { Answer } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { failuresOf } from "./failures.ts";
import { actionFit, doerFits, isTheirs, stuffFits } from "./fit.ts";
import { boundsOf } from "./period.ts";
import { type Ground, namesNothing, poolOf, stepsOf } from "./pool.ts";
import { OTHERS_DID, type Period, type Query, SPEAKER_DID, type Topic } from "./query.ts";
import { plainWords } from "./words.ts";
import { putsIn } from "./work.ts";

type Of<K extends Query["ask"]> = Extract<Query, { ask: K }>;

const EVERY = 2000;

const isWork = (record: KeptRecord): boolean => record.fields.kind === "repair";

/** Those done by the one asked about; those of one whose name comes up, where there are any. */
const byDoer = (ground: Ground, topic: Topic, pool: readonly KeptRecord[]): readonly KeptRecord[] => {
  if (topic.who !== null) {
    const done = pool.filter((record) => doerFits(topic, record));
    const isOne = topic.who !== SPEAKER_DID && topic.who !== OTHERS_DID && pool.length < FEW;
    return done.length > 0 || !isOne ? done : pool.filter(namedIn(ground, { words: plainWords(topic.who) }));
  }
  const theirs = pool.filter((record) => isTheirs(topic, record));
  if (theirs.length > 0) return theirs;
  const named = namesNothing(topic) && pool.length < FEW ? pool.filter(namedIn(ground, topic)) : [];
  return named.length > 0 ? named : pool;
};

/** Whether one of the words stands in the note that told of a record. */
const namedIn =
  ({ history }: Ground, { words }: Pick<Topic, "words">) =>
  ({ noteId }: KeptRecord): boolean => {
    const told = words.length === 0 ? [] : plainWords(history.note(noteId)?.text ?? "");
    return words.some((word) => told.includes(word));
  };

/** Those done as asked; those done in a way that people call so; all, when a word for the action fits none. */
const asAsked = (ground: Ground, topic: Topic, pool: readonly KeptRecord[]): readonly KeptRecord[] => {
  const stuff = pool.filter((record) => stuffFits(topic, record));
  const from = byDoer(ground, topic, stuff.length > 0 ? stuff : pool);
  const exact = from.filter((record) => actionFit(topic, record) === 2);
  const loose = from.filter((record) => actionFit(topic, record) > 0);
  return exact.length > 0 ? exact : loose.length > 0 ? loose : [];
};

/** More records than these are added up, not looked through. */
const FEW = 200;

/** The newest work whatever came of it, and what gave out before. */
const fixesOf = (ground: Ground, { topic, period }: Of<"count">): readonly KeptRecord[] => {
  const recent = poolOf(ground, topic, { kinds: ["repair"], period, limit: FEW }, isWork);
  if (recent.length < FEW) return recent;
  const failed = poolOf(
    ground,
    topic,
    { kinds: ["repair"], outcomes: ["failed"], period, limit: FEW },
    isWork,
  );
  return [...new Map([...recent, ...failed].map((record) => [record.id, record])).values()];
};

const countWork = (ground: Ground, query: Of<"count">, asked: readonly KeptRecord[], pool: number): number =>
  pool < FEW ? asked.length : Math.max(asked.length, totalOf(ground, query.topic, query.period)?.count ?? 0);

/** "Before the new one": what ends a row of fixes is not all that may have given out. */
const ofAnyFix = (topic: Topic): Topic => (topic.actions.every(putsIn) ? { ...topic, actions: [] } : topic);

/** How many times fixes of a thing gave out, or how many times a piece of work was done. */
export const answerCount = (ground: Ground, query: Of<"count">): Answer => {
  const pool = fixesOf(ground, query);
  if (query.of === "work") {
    const asked = asAsked(ground, query.topic, pool);
    return asked.length > 0
      ? answerTo(query, { records: asked, count: countWork(ground, query, asked, pool.length) })
      : nothingFits(ground, query, { count: 0 });
  }
  const asked = asAsked(ground, ofAnyFix(query.topic), pool);
  const fixes = asked.length > 0 ? asked : pool;
  const failed = fixes.filter((record) => failuresOf(record) > 0);
  const count = failed.reduce((sum, record) => sum + failuresOf(record), 0);
  if (fixes.length === 0) return nothingFits(ground, query, { count: 0 });
  return answerTo(query, { records: failed.length > 0 ? failed : fixes.slice(0, 1), count });
};

/** Count and money of all work in a period, without looking through it; null where only a look can tell what fits. */
const totalOf = (ground: Ground, topic: Topic, period: Period | null) => {
  if (topic.where.length > 0 || topic.materials.length > 0 || topic.who !== null) return null;
  const components = namesNothing(topic) ? undefined : stepsOf(topic)[0];
  return ground.history.total({
    kinds: ["repair"],
    ...(components === undefined ? {} : { components }),
    ...(topic.actions.length === 0 ? {} : { actions: topic.actions }),
    ...boundsOf(period),
  });
};

const moneyOf = (records: readonly KeptRecord[]): number =>
  Math.round(records.reduce((sum, record) => sum + (record.fields.cost ?? 0), 0) * 100) / 100;

const hasCost = (record: KeptRecord): boolean =>
  record.fields.cost !== null && (record.fields.kind === "repair" || record.fields.kind === "check");

const dearestOf = (query: Of<"cost">, counted: readonly KeptRecord[]): Answer => {
  const [dearest] = [...counted].sort((a, b) => (b.fields.cost ?? 0) - (a.fields.cost ?? 0));
  return dearest === undefined
    ? answerTo(query, { cost: 0, because: "no-cost-noted" })
    : answerTo(query, { records: [dearest], cost: dearest.fields.cost });
};

/** Money that the records of work done say. */
export const answerCost = (ground: Ground, query: Of<"cost">): Answer => {
  const { topic, period } = query;
  const whole = totalOf(ground, topic, period);
  const isMuch = whole !== null && whole.count > FEW;
  const limit = isMuch ? FEW : EVERY;
  const pool = poolOf(ground, topic, { period, kinds: ["repair", "check"], limit }, hasCost);
  const asked = asAsked(ground, topic, pool);
  const counted = asked.length > 0 || topic.actions.length > 0 || topic.who !== null ? asked : pool;
  if (counted.length === 0 && !isMuch)
    return nothingFits(ground, query, { cost: 0, because: "no-cost-noted" });
  if (query.of === "dearest") return dearestOf(query, counted);
  return answerTo(query, { records: counted, cost: isMuch ? whole.cost : moneyOf(counted) });
};

/** All work of a period, a thing or a system, newest first. */
export const answerList = (ground: Ground, query: Of<"list">): Answer => {
  const { topic, period } = query;
  const pool = poolOf(ground, topic, { kinds: ["repair"], period, limit: FEW }, isWork);
  const asked = asAsked(ground, topic, pool);
  if (asked.length === 0) return nothingFits(ground, query, { count: 0 });
  const whole = pool.length < FEW ? null : totalOf(ground, topic, period);
  return answerTo(query, { records: asked, count: whole?.count ?? asked.length });
};
