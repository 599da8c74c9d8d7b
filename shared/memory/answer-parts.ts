import type { KeptRecord } from "../history.ts";
import type { Answer } from "./answer-data.ts";
import { type Ground, nearestTo } from "./pool.ts";
import type { Query, Topic } from "./query.ts";

/** An answer with nothing in it but what is given. */
export const answerTo = (query: Query, more: Partial<Omit<Answer, "kind" | "query">> = {}): Answer => ({
  kind: query.ask,
  query,
  records: [],
  count: null,
  cost: null,
  verdict: null,
  notes: [],
  nearest: [],
  letGo: [],
  lives: [],
  use: [],
  because: "found",
  ...more,
});

/** What is nearest may be another thing, of which nothing follows. */
const whyNot = (nearest: readonly KeptRecord[], { named, systems }: Topic): Answer["because"] => {
  if (named.length + systems.length === 0) return "unknown-thing";
  const own = nearest.filter(({ fields }) => named.some(({ component }) => component === fields.component));
  const kinds = new Set(own.map((record) => record.fields.kind));
  if (kinds.has("repair") || kinds.size === 0) return "never-noted";
  return kinds.has("todo") ? "only-planned" : "only-found-wrong";
};

/** Nothing fits: the nearest things, and why. */
export const nothingFits = (
  ground: Ground,
  query: Query & { readonly topic: Topic },
  more: Partial<Answer> = {},
): Answer => {
  const nearest = nearestTo(ground, query.topic);
  return answerTo(query, { nearest, because: whyNot(nearest, query.topic), ...more });
};
