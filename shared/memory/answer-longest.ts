import type { Temporal } from "temporal-polyfill";
import type { KeptRecord } from "../history.ts";
import type { Answer, Life } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { actionFit, areKin } from "./fit.ts";
import { lifeOf } from "./lives.ts";
import { comparePlaces } from "./place.ts";
import { type Ground, poolOf } from "./pool.ts";
import type { Query } from "./query.ts";
import { isAfter } from "./when.ts";

const MANY = 80;

const longestFirst = (a: Life, b: Life): number => (b.lived.days ?? -1) - (a.lived.days ?? -1);

/** The first work of the same kind at the same place that was done after another. */
const nextLike = (
  { id, fields }: KeptRecord,
  pool: readonly KeptRecord[],
  ground: Ground,
): KeptRecord | undefined =>
  pool
    .filter(
      (other) =>
        other.id !== id &&
        isAfter(other.fields.date, fields.date, ground.hemisphere) &&
        (other.fields.action === fields.action || areKin(other.fields.action, fields.action)) &&
        comparePlaces(fields.where, other.fields.where) !== "different",
    )
    .findLast(
      (each, _, all) => !all.some((other) => isAfter(each.fields.date, other.fields.date, ground.hemisphere)),
    );

/** Every way tried on a thing by how long it held, to its failure or to the last good look. */
export const answerLongest = (
  ground: Ground,
  query: Extract<Query, { ask: "longest" }>,
  today: Temporal.PlainDate,
): Answer => {
  const pool = poolOf(ground, query.topic, { kinds: ["repair"], limit: MANY });
  const asked = pool.filter((record) => actionFit(query.topic, record) > 0);
  const lives = (asked.length > 0 ? asked : pool)
    .map((record) => lifeOf(record, { ...ground, today, next: nextLike(record, pool, ground) }))
    .sort(longestFirst);
  if (lives.length === 0) return nothingFits(ground, query);
  const known = lives.filter((life) => life.lived.days !== null);
  const ordered = query.order === "longest" || known.length === 0 ? lives : [...known].reverse();
  return answerTo(query, { lives: ordered, records: ordered.map((life) => life.record) });
};
