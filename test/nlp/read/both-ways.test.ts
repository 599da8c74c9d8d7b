import { expect, it } from "vitest";
import { bothWays } from "../../../nlp/read/both-ways.ts";
import tables from "../../../nlp/read/field-judges.json" with { type: "json" };
import { layered, layering } from "../../../nlp/read/layered.ts";
import { parts, weighing } from "../../../nlp/read/linear.ts";
import { OUTCOMES } from "../../../shared/vocabulary.ts";

it.each([
  ["seen once", ["ruled=holding", "word=dry", "action=seal"]],
  ["seen twice", ["word=leaking", "word=leaking", "rule=none"]],
  ["never met", ["no such sign"]],
])("two judges looked up at once say what each says alone: %s", (_, signs) => {
  const both = bothWays(tables.outcomeLayers, tables.outcome, OUTCOMES)(signs);
  const deep = layered(layering(tables.outcomeLayers, OUTCOMES), signs);
  const flat = parts(weighing(tables.outcome, OUTCOMES), signs);
  for (const [at, sure] of both.entries())
    expect(sure).toBeCloseTo(((deep[at] ?? 0) + (flat[at] ?? 0)) / 2, 12);
});
