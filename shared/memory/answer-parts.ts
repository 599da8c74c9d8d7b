import type { KeptRecord } from "../history.ts";
import type { Answer } from "./answer-data.ts";
import { type Ground, nearestTo } from "./pool.ts";
import type { Query } from "./query.ts";

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

const whyNot = (nearest: readonly KeptRecord[], named: boolean): Answer["because"] => {
  if (!named) return "unknown-thing";
  const kinds = new Set(nearest.map((record) => record.fields.kind));
  if (kinds.has("repair") || kinds.size === 0) return "never-noted";
  return kinds.has("todo") ? "only-planned" : "only-found-wrong";
};

/** Nothing fits: the nearest things, and why. */
export const nothingFits = (
  ground: Ground,
  query: Query & { readonly topic: Parameters<typeof nearestTo>[1] },
  more: Partial<Answer> = {},
): Answer => {
  const nearest = nearestTo(ground, query.topic);
  const named = query.topic.named.length + query.topic.systems.length > 0;
  return answerTo(query, { nearest, because: whyNot(nearest, named), ...more });
};
