import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";

const moment = {
  said: "2026-04-26T18:30:00-06:00",
  zone: "America/Denver",
  hemisphere: "north",
} as const;
const first = (text: string) => read(text, moment).records[0]?.fields;
const used = (text: string) => read(text, moment).usage.map((draft) => draft.usage);

describe("how work went", () => {
  it.each([
    ["resealed the skylight in march and not a peep out of it since", "holding"],
    ["tightened the faucet on monday. no wobble at the base", "holding"],
    ["cleaned the furnace burner and it lights every time", "holding"],
    ["put a new hinge on the entry door. right as rain", "holding"],
    ["patched the awning on friday, we'll see if it holds", "untested"],
    ["resealed the skylight yesterday. should hold fine", "untested"],
    ["replaced the water pump this morning, haven't run anything through it yet", "untested"],
    ["glued the drawer latch in may and it was back to square one by june", "failed"],
    ["cleaned the tow plug on monday but it still comes and goes", "partly"],
    ["the epoxy patch on the gray tank is holding", "holding"],
    ["the epoxy patch on the gray tank let go", "failed"],
    ["that silicone on the front window gave out", "failed"],
    ["well the barrel bolt tore out and the kitchen drawer is all over the floor again", "failed"],
  ])("%s: %s", (text, outcome) => {
    expect(first(text)?.outcome).toBe(outcome);
  });

  it.fails("known gap: a dozen trips on it", () => {
    expect(first("swapped the water pump in june, a dozen trips on it")?.outcome).toBe("holding");
  });
});

describe("use since", () => {
  it.each([
    [
      "resealed the skylight in march, been through three storms and not a drop",
      { count: 3, unit: "storms" },
    ],
    ["welded the black tank in may and filled it a dozen times, no drips", { count: 12, unit: "fills" }],
    ["glued the fridge gasket in august and it let go after about three weeks", { count: 3, unit: "weeks" }],
    ["bolted the gray tank back up and it hasn't moved in 300 km of gravel", { count: 300, unit: "km" }],
  ])("%s", (text, exposure) => {
    expect(first(text)?.exposure).toEqual([exposure]);
    expect(used(text)).toEqual([]);
  });
});

describe("use of the rig", () => {
  it.each([
    ["we towed 410 miles this weekend", { count: 410, unit: "miles" }],
    ["we put 1,600 on her this summer", { count: 1600, unit: "miles" }],
    ["hub meter reads 18,220", { reading: 18220, unit: "miles" }],
    ["Six nights.", { count: 6, unit: "nights" }],
  ])("%s", (text, usage) => {
    expect(used(text)).toEqual([expect.objectContaining(usage)]);
  });

  it.each([
    "the nearest parts store is 40 miles away",
    "we walked five miles round the lake",
    "sixty miles an hour is plenty for these tires",
    "check the lug nuts every 500 miles",
  ])("is not: %s", (text) => {
    expect(used(text)).toEqual([]);
  });
});

describe("places", () => {
  it.each([
    ["resealed the gray tank at the outlet today", /outlet/],
    ["patched the black tank where the pipe goes in", /pipe goes in/],
    ["replaced the front window over the bed", /front.*over the bed/],
  ])("%s", (text, where) => {
    expect(first(text)?.where).toMatch(where);
  });

  it("is none where the words name the thing itself", () => {
    expect(first("welded the tongue jack on monday")?.where).toBeNull();
    expect(first("replaced the water heater over the winter")?.where).toBeNull();
  });
});
