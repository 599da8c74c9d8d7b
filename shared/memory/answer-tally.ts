import type { KeptRecord } from "../history.ts";
import type { Answer } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { failuresOf } from "./failures.ts";
import { actionFit, doerFits, stuffFits } from "./fit.ts";
import { type Ground, namesNothing, poolOf, stepsOf } from "./pool.ts";
import type { Query, Topic } from "./query.ts";

type Of<K extends Query["ask"]> = Extract<Query, { ask: K }>;

const MANY = 2000;

const isWork = (record: KeptRecord): boolean => record.fields.kind === "repair";

/** Those done by the one asked about, where anything is known of that. */
const byDoer = (topic: Topic, pool: readonly KeptRecord[]): readonly KeptRecord[] => {
  const theirs = pool.filter((record) => doerFits(topic, record));
  return theirs.length > 0 ? theirs : pool;
};

/** Those done as asked; those done in a way that people call so; all, when a word for the action fits none. */
const asAsked = (topic: Topic, pool: readonly KeptRecord[]): readonly KeptRecord[] => {
  const stuff = pool.filter((record) => stuffFits(topic, record));
  const from = byDoer(topic, stuff.length > 0 ? stuff : pool);
  const exact = from.filter((record) => actionFit(topic, record) === 2);
  const loose = from.filter((record) => actionFit(topic, record) > 0);
  return exact.length > 0 ? exact : loose.length > 0 ? loose : [];
};

/** How many times fixes of a thing gave out, or how many times a piece of work was done. */
export const answerCount = (ground: Ground, query: Of<"count">): Answer => {
  const pool = poolOf(ground, query.topic, { kinds: ["repair"], period: query.period, limit: MANY }, isWork);
  const asked = asAsked(query.topic, pool);
  if (query.of === "work") {
    return asked.length > 0
      ? answerTo(query, { records: asked, count: asked.length })
      : nothingFits(ground, query, { count: 0 });
  }
  const fixes = asked.length > 0 ? asked : pool;
  const failed = fixes.filter((record) => failuresOf(record) > 0);
  const count = failed.reduce((sum, record) => sum + failuresOf(record), 0);
  if (fixes.length === 0) return nothingFits(ground, query, { count: 0 });
  return answerTo(query, { records: failed.length > 0 ? failed : fixes.slice(0, 1), count });
};

const wholeSum = (ground: Ground, query: Of<"cost">): number | null => {
  const { topic, period } = query;
  const plain = topic.where.length === 0 && topic.actions.length === 0 && topic.materials.length === 0;
  if (!plain || period !== null) return null;
  const components = namesNothing(topic) ? undefined : stepsOf(topic)[0];
  return ground.history.total({
    kinds: ["repair", "check"],
    ...(components === undefined ? {} : { components }),
  }).cost;
};

const moneyOf = (records: readonly KeptRecord[]): number =>
  Math.round(records.reduce((sum, record) => sum + (record.fields.cost ?? 0), 0) * 100) / 100;

const hasCost = (record: KeptRecord): boolean =>
  record.fields.cost !== null && (record.fields.kind === "repair" || record.fields.kind === "check");

/** Money that the records of work done say. */
export const answerCost = (ground: Ground, query: Of<"cost">): Answer => {
  const limit = wholeSum(ground, query) === null ? MANY * 10 : MANY / 10;
  const pool = poolOf(ground, query.topic, { period: query.period, limit }, hasCost);
  const asked = asAsked(query.topic, pool);
  const counted = asked.length > 0 ? asked : query.topic.actions.length > 0 ? [] : pool;
  if (counted.length === 0) {
    return nothingFits(ground, query, { cost: 0, because: "no-cost-noted" });
  }
  const whole = pool.length === limit ? wholeSum(ground, query) : null;
  return answerTo(query, { records: counted, cost: whole ?? moneyOf(counted) });
};

/** All work of a period, a thing or a system, newest first. */
export const answerList = (ground: Ground, query: Of<"list">): Answer => {
  const pool = poolOf(ground, query.topic, { kinds: ["repair"], period: query.period, limit: MANY }, isWork);
  const asked = asAsked(query.topic, pool);
  return asked.length > 0
    ? answerTo(query, { records: asked, count: asked.length })
    : nothingFits(ground, query, { count: 0 });
};
