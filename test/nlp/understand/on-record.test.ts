import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import { understand } from "../../../nlp/understand/understand.ts";
import { EMPTY_SCENE, type Scene, type Shown } from "../../../shared/memory/scene.ts";
import type { Moment } from "../../../shared/reading.ts";

const NOW: Moment = { said: "2025-08-03T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };

const NOTES = [
  "put two longer screws in the hinge of the kitchen press",
  "greased the wheel bearings at easter",
  "patched the awning with tape",
  "sealed the skylight over the bunk with butyl",
  "a squirt of silicone grease on the squeaky stabilizer leg by the door",
  "tightened the screws of the roof air conditioner",
  "a new seal round the hatch where the gas bottles are, 23 dollars",
];

const afterAll = (): Scene => {
  const older = NOTES.flatMap((words, nth): Shown[] =>
    read(words, NOW).records.map(({ fields }) => ({ id: nth + 1, fields, words })),
  ).reverse();
  return { ...EMPTY_SCENE, older };
};

const thingAsked = (text: string): unknown => {
  const intent = understand(text, NOW, afterAll());
  return intent.is === "ask" && "topic" in intent.query ? intent.query.topic.named[0]?.component : intent.is;
};

describe("a question about a thing on record", () => {
  it.each([
    ["how many times did my fixing of that press give out", "cabinet"],
    ["what did i give that squeaky leg by the door", "stabilizer"],
  ])("means the thing that was told of in its words: %s", (text, thing) => {
    expect(thingAsked(text)).toBe(thing);
  });

  it.each([
    ["when did i stop that cooler up top from wetting my pillow", "air-conditioner"],
    ["the little door the cylinders sit behind, is it still tight", "hatch"],
    ["what has the flap the propane sits behind cost me", "hatch"],
  ])("means the thing that its words speak of: %s", (text, thing) => {
    expect(thingAsked(text)).toBe(thing);
  });

  it.each([
    ["did i ever swap the toilet", "toilet"],
    ["have i ever put brakes on it", "brake"],
    ["when did we last paint the bumper", "bumper"],
  ])("stays with a thing that nothing is on record of: %s", (text, thing) => {
    expect(thingAsked(text)).toBe(thing);
  });
});
