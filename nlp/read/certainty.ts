import type { Field } from "../../shared/record.ts";
import calibration from "./calibration.json" with { type: "json" };

type Table = Readonly<Partial<Record<Field, Readonly<Record<string, number>>>>>;
const TABLE: Table = calibration.fields;
const OTHERWISE = 0.7;

/** What kind of rule gave a field: "verdict:bone dry" counts as "verdict". */
export const bucketOf = (rule: string): string => rule.split(/[:,]/)[0] ?? rule;

/**
 * How often a field given by such a rule turns out right, from 0 to 1.
 * Counted over notes with known records (test/nlp/read/figures.ts writes the table).
 */
export const sureOf = (field: Field, rule: string): number => {
  const shares = TABLE[field];
  return shares?.[bucketOf(rule)] ?? shares?.["otherwise"] ?? OTHERWISE;
};
