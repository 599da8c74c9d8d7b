import type { Answer, Life } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { actionFit } from "./fit.ts";
import { lifeOf } from "./lives.ts";
import { type Ground, poolOf } from "./pool.ts";
import type { Query } from "./query.ts";

const MANY = 80;

const longestFirst = (a: Life, b: Life): number => (b.lived.days ?? -1) - (a.lived.days ?? -1);

/** Every way tried on a thing by how long it held, to its failure or to the last good look. */
export const answerLongest = (ground: Ground, query: Extract<Query, { ask: "longest" }>): Answer => {
  const pool = poolOf(ground, query.topic, { kinds: ["repair"], limit: MANY });
  const asked = pool.filter((record) => actionFit(query.topic, record) > 0);
  const lives = (asked.length > 0 ? asked : pool)
    .map((record) => lifeOf(record, ground.history, ground.hemisphere))
    .sort(longestFirst);
  if (lives.length === 0) return nothingFits(ground, query);
  const known = lives.filter((life) => life.lived.days !== null);
  const ordered = query.order === "longest" || known.length === 0 ? lives : [...known].reverse();
  return answerTo(query, { lives: ordered, records: ordered.map((life) => life.record) });
};
