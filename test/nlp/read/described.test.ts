import { describe, expect, it } from "vitest";
import { SPELLER } from "../../../nlp/lexicon/lexicon.ts";
import { tokenize } from "../../../nlp/lexicon/spelling.ts";
import { describer, describingSigns, withDescribed } from "../../../nlp/read/described.ts";
import { read } from "../../../nlp/read/index.ts";
import learnt from "../../../nlp/read/judges.json" with { type: "json" };
import { layered, layering } from "../../../nlp/read/layered.ts";
import type { Telling } from "../../../nlp/read/tellings.ts";
import type { Moment } from "../../../shared/reading.ts";
import { COMPONENTS, type ComponentId } from "../../../shared/vocabulary.ts";

const NOW: Moment = { said: "2024-08-17T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };

describe("a thing called by what it does", () => {
  it.each([
    [
      "the contraption you climb on to get in the door was squealing so i gave the hinges of it a squirt of dry lube",
      "entry-step",
    ],
    ["the box on top that blows cold was dripping inside so i cleaned its drain pan", "air-conditioner"],
    ["the lamp that shows the plate at the back was out, new bulb", "exterior-light"],
    ["the round greasy things inside the wheels got packed with marine grease", "wheel-bearing"],
  ])("is read as that thing: %s", (text, component) => {
    expect(read(text, NOW).records.map(({ fields }) => fields.component)).toEqual([component]);
  });
});

describe("what words speak of", () => {
  const telling = { at: 4, from: 3, to: 6, clause: 0, deed: undefined } satisfies Telling;
  const spoken = new Map<ComponentId, number>([
    ["toilet", 0.6],
    ["sink", 0.3],
    ["faucet", 0.2],
    ["roof", 0.05],
  ]);

  it("stands beside what is named, the likeliest two, where it is likely at all", () => {
    const named = { from: 0, to: 1, id: "faucet", weak: false, words: "tap" } as const;
    expect(withDescribed([named], spoken, telling).map(({ id }) => id)).toEqual(["faucet", "toilet", "sink"]);
    expect(withDescribed([], new Map([["roof", 0.05]]), telling)).toEqual([]);
  });
});

describe("adding a text up once for all of its places", () => {
  const layers = layering(learnt.described, COMPONENTS);
  const told =
    "greased the wind down leg, and the lid over the bed, well it was weeping again so i ran a bead round it";

  it.each([
    ["a short text", told],
    ["one longer than is looked at whole", Array.from({ length: 8 }, () => told).join(". ")],
  ])("gives what each place by itself would: %s", (_, text) => {
    const tokens = tokenize(text, SPELLER);
    const describe = describer(layers);
    for (const at of tokens.keys())
      expect(describe(tokens, at)).toEqual(layered(layers, describingSigns(tokens, at)));
  });
});

describe("how far work went", () => {
  it("is no second thing: both wheels", () => {
    const { records } = read("put new magnets in the brakes, both wheels, and it was 240 with the tax", NOW);
    expect(records.map(({ fields }) => [fields.component, fields.cost])).toEqual([["brake", 240]]);
  });

  it("leaves two things that are named together two", () => {
    const { records } = read("checked the brakes and all the wheels", NOW);
    expect(records.map(({ fields }) => fields.component)).toEqual(["brake", "wheel"]);
  });
});

describe("a long note", () => {
  it("that tells of one trouble at length is not taken for talk", () => {
    const { records } = read(
      "the awning arm on the far side creaks something awful when the wind gets under it, sounds like a ship, the kids think it's pirates. nothing done about it, haven't had the ladder out all week what with the rain and the school run",
      NOW,
    );
    expect(records.map(({ fields }) => [fields.kind, fields.component])).toEqual([["fault", "awning"]]);
  });
});
