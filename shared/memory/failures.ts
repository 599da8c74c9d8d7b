import type { KeptRecord } from "../history.ts";

const outcomesOf = (record: KeptRecord): readonly string[] => [
  ...record.verdicts.map((verdict) => verdict.outcome),
  ...(record.fields.outcome === null ? [] : [record.fields.outcome]),
];

/** How many times a fix gave out: each turn to "failed" counts once, however often it is told. */
export const failuresOf = (record: KeptRecord): number => {
  const outcomes = outcomesOf(record);
  return outcomes.filter((outcome, at) => outcome === "failed" && outcomes[at - 1] !== "failed").length;
};
