import { describe, expect, it } from "vitest";
import { z } from "zod";
import actions from "../../../nlp/lexicon/data/actions.json" with { type: "json" };
import classes from "../../../nlp/lexicon/data/classes.json" with { type: "json" };
import components from "../../../nlp/lexicon/data/components.json" with { type: "json" };
import cues from "../../../nlp/lexicon/data/cues.json" with { type: "json" };
import faults from "../../../nlp/lexicon/data/faults.json" with { type: "json" };
import materials from "../../../nlp/lexicon/data/materials.json" with { type: "json" };
import outcomes from "../../../nlp/lexicon/data/outcomes.json" with { type: "json" };
import { findActions, findComponents, findMaterials, findPlaces } from "../../../nlp/lexicon/index.ts";
import vocabulary from "../../../shared/vocabulary.json" with { type: "json" };
import { ACTIONS, COMPONENTS, OUTCOMES } from "../../../shared/vocabulary.ts";

const phrase = z.string().regex(/^[a-z0-9][a-z0-9 -]*$/);
const pattern = z.string().regex(/^[a-z0-9~|%?#_.' -]+$/);
const componentSchema = z.strictObject({
  names: z.array(phrase).min(1),
  weak: z.array(phrase),
  parts: z.array(phrase),
  claims: z.array(phrase),
  within: z.array(z.enum(COMPONENTS)).optional(),
});
const senseSchema = z.strictObject({
  sense: z.enum(["deed", "fit", "new", "fasten", "apply", "prep", "look", "generic"]),
  action: z.enum(ACTIONS).nullable(),
  patterns: z.array(pattern).min(1),
});

describe("the lexicon's data", () => {
  it("has every component and no other, in its form", () => {
    expect(Object.keys(components).sort()).toEqual([...COMPONENTS].sort());
    for (const entry of Object.values(components)) componentSchema.parse(entry);
  });

  it("names each component in one place", () => {
    const names = Object.values(components).flatMap((entry) => entry.names);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });

  it("has patterns of the known form for every action and outcome", () => {
    for (const sense of actions.senses) senseSchema.parse(sense);
    expect(ACTIONS.filter((action) => !actions.senses.some((sense) => sense.action === action))).toEqual([]);
    for (const { outcome, patterns } of outcomes.patterns) {
      z.enum(OUTCOMES).nullable().parse(outcome);
      z.array(pattern).parse(patterns);
    }
    for (const { patterns } of faults.patterns) z.array(pattern).parse(patterns);
    z.record(z.string(), z.array(pattern)).parse(cues.cues);
  });

  it("uses only classes that exist", () => {
    const used =
      JSON.stringify([actions.senses, outcomes.patterns, faults.patterns, cues.cues]).match(/%[a-z]+/g) ?? [];
    expect([...new Set(used)].filter((name) => !(name.slice(1) in classes.classes))).toEqual([]);
  });

  it("has the material classes of the vocabulary", () => {
    expect(Object.keys(materials.heads).sort()).toEqual([...vocabulary.materials].sort());
  });
});

describe("the spoken forms of the vocabulary", () => {
  const said = Object.values(vocabulary.systems).flatMap((system) =>
    Object.entries(system as Record<string, { say: string[] }>).flatMap(([id, { say }]) =>
      say.map((words) => [words, id] as const),
    ),
  );
  const shared = new Set([
    "pex",
    "hinge",
    "filter canister",
    "ball",
    "tap",
    "switch",
    "screen",
    "washer",
    "floor by the door",
    "vinyl",
    "leaf spring",
  ]);
  it.each(said.filter(([words]) => !shared.has(words)))("%s is a %s", (words, id) => {
    expect(findComponents(words).map((mention) => mention.component)).toContain(id);
  });
});

describe("what is named in a text", () => {
  it("comes with its place in the text, spelling slips and dialects included", () => {
    const text = "the offside tyre valve, the grey tank and the furnce";
    expect(
      findComponents(text).map(({ component, span }) => [component, text.slice(span.start, span.end)]),
    ).toEqual([
      ["tire", "tyre valve"],
      ["gray-tank", "grey tank"],
      ["furnace", "furnce"],
    ]);
    expect(findPlaces(text).map(({ words }) => words)).toEqual(["offside"]);
  });

  it("leaves alone words that only look like a thing of the trade", () => {
    for (const text of [
      "my hair dryer",
      "we picked the town with a beach",
      "the weather turned",
      "a dinner for winners",
    ])
      expect(findComponents(text)).toEqual([]);
  });

  it("keeps kind words and metals, drops sizes and brands", () => {
    expect(
      findMaterials("two 3/8 stainless bolts and a tube of Norbane lap sealant").map(({ name, brands }) => [
        name,
        brands,
      ]),
    ).toEqual([
      ["stainless bolt", []],
      ["lap sealant", ["Norbane"]],
    ]);
  });

  it("knows verbs in every tense", () => {
    for (const text of ["reseal", "reseals", "resealing", "resealed", "re-sealed"])
      expect(findActions(text)[0]?.action).toBe("seal");
    for (const text of ["rehung the door", "re-hung the door", "hung the door back"])
      expect(findActions(text).length).toBeGreaterThan(0);
  });
});
