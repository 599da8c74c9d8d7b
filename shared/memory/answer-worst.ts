import type { KeptRecord } from "../history.ts";
import type { Answer } from "./answer-data.ts";
import { answerTo, nothingFits } from "./answer-parts.ts";
import { failuresOf } from "./failures.ts";
import { type Ground, poolOf } from "./pool.ts";
import type { Query } from "./query.ts";

const MANY = 150;

/** What keeps failing: the failed fixes of the thing that failed most often, then of the next. Things that failed once are left out. */
export const answerWorst = (ground: Ground, query: Extract<Query, { ask: "worst" }>): Answer => {
  const failed = poolOf(
    ground,
    query.topic,
    { kinds: ["repair"], outcomes: ["failed"], period: query.period, limit: MANY },
    (record) => failuresOf(record) > 0,
  );
  const components = [...new Set(failed.map((record) => record.fields.component))];
  const things = components.map((component) =>
    failed.filter((record) => record.fields.component === component),
  );
  const timesOf = (records: readonly KeptRecord[]): number =>
    records.reduce((sum, record) => sum + failuresOf(record), 0);
  const worst = things.filter((records) => timesOf(records) > 1).sort((a, b) => timesOf(b) - timesOf(a));
  const records = (worst.length > 0 ? worst : things).flat();
  return records.length > 0
    ? answerTo(query, { records, count: records.length })
    : nothingFits(ground, query, { count: 0 });
};
