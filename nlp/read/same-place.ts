import type { Draft } from "../../shared/reading.ts";
import type { Action } from "../../shared/vocabulary.ts";

/** Done to all of a thing, wherever part of it is. */
const OF_ALL: Action = "flush";

const SURE = 0.8;

const goesOn = (last: Draft, { fields }: Draft): boolean =>
  last.fields.component === fields.component &&
  fields.where === null &&
  last.fields.where !== null &&
  fields.action !== OF_ALL;

/** "The window over the bed leaked, so I taped it, and that let go, so in May I bedded it": told on of one thing, it is where it was. */
export const samePlace = (drafts: readonly Draft[]): Draft[] => {
  const out: Draft[] = [];
  for (const draft of drafts) {
    const last = out.at(-1);
    out.push(
      last !== undefined && goesOn(last, draft)
        ? {
            ...draft,
            fields: { ...draft.fields, where: last.fields.where },
            evidence: {
              ...draft.evidence,
              where: { spans: last.evidence.where?.spans ?? [], sure: SURE, rule: "same-place" },
            },
          }
        : draft,
    );
  }
  return out;
};
