import type { Temporal } from "temporal-polyfill";
import type { KeptRecord } from "../history.ts";
import type { Action } from "../vocabulary.ts";
import type { Answer, Life } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { actionFit, areKin } from "./fit.ts";
import { lifeOf } from "./lives.ts";
import { comparePlaces } from "./place.ts";
import { type Ground, poolOf } from "./pool.ts";
import type { Query, Topic } from "./query.ts";
import { isAfter } from "./when.ts";
import { isCure } from "./work.ts";

const MANY = 80;

/** Fewer than this, there is nothing to weigh against each other. */
const SOME = 2;
/** Named less surely than this, a thing gives way to the stuff asked about: "rivets or bolts". */
const SURELY = 0.65;

const isWork = (record: KeptRecord): boolean => record.fields.kind === "repair";

/** "Screws, glue or bolts": all the work on whatever most of them went into. */
const byStuff = (ground: Ground, topic: Topic): readonly KeptRecord[] => {
  const made = poolOf(
    ground,
    { ...topic, named: [], actions: [], words: [] },
    { kinds: ["repair"], limit: MANY },
  );
  const count = ({ fields }: KeptRecord): number =>
    made.filter((each) => each.fields.component === fields.component).length;
  const [most] = [...made].sort((a, b) => count(b) - count(a));
  return most === undefined
    ? []
    : ground.history
        .records({ components: [most.fields.component], kinds: ["repair"], limit: MANY })
        .filter(isWork);
};

const poolFor = (ground: Ground, topic: Topic): readonly KeptRecord[] => {
  const vague =
    topic.materials.length > 0 && (topic.named[0]?.sure ?? 0) < SURELY && topic.systems.length === 0;
  const made = vague ? byStuff(ground, topic) : [];
  return made.length > 0 ? made : poolOf(ground, topic, { kinds: ["repair"], limit: MANY });
};

/** Greased or wiped down, and nothing heard of it since: no cure that may have lasted. */
const isUpkeep = ({ record: { fields } }: Life): boolean =>
  fields.outcome === "untested" && !isCure(fields.action);

const longestFirst = (a: Life, b: Life): number =>
  Number(isUpkeep(a)) - Number(isUpkeep(b)) || (b.lived.days ?? -1) - (a.lived.days ?? -1);

/** Whether work done later on a thing shows that the earlier is over: the same kind again, or another cure. */
const endsIt = (later: Action | null, earlier: Action | null): boolean =>
  later === earlier || areKin(later, earlier) || isCure(later);

/** The first such work at the same place that was done after another. */
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
        endsIt(other.fields.action, fields.action) &&
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
  const pool = poolFor(ground, query.topic);
  const asked = pool.filter((record) => actionFit(query.topic, record) > 0);
  const lives = (asked.length >= SOME ? asked : pool)
    .map((record) => lifeOf(record, { ...ground, today, next: nextLike(record, pool, ground) }))
    .sort(longestFirst);
  if (lives.length === 0) return nothingFits(ground, query);
  const known = lives.filter((life) => life.lived.days !== null);
  const ordered = query.order === "longest" || known.length === 0 ? lives : [...known].reverse();
  return answerTo(query, { lives: ordered, records: ordered.map((life) => life.record) });
};
