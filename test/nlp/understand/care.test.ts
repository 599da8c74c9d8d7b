import { describe, expect, it } from "vitest";
import { careAnswerIn, careIn } from "../../../nlp/understand/care.ts";

describe("what is wanted of standing care", () => {
  it.each([
    "care",
    "Care list",
    "show me the standing care",
    "what checks do you know?",
    "set up care please",
  ])("%s", (text) => {
    expect(careIn(text)).toEqual({ care: "show" });
  });

  it.each([
    ["switch all care off", false],
    ["turn on everything", true],
    ["keep an eye on all of it", true],
    ["stop asking me about everything please", false],
  ])("%s", (text, on) => {
    expect(careIn(text)).toEqual({ care: "all", on });
  });

  it.each([
    ["switch the tire checks on", true, "the tire checks"],
    ["turn on the roof sealant check too", true, "the roof sealant check"],
    ["keep an eye on the wheel bearing checks", true, "the wheel bearing checks"],
    ["stop nagging me about the awning", false, "the awning"],
    ["don't ask about the slide any more", false, "the slide"],
    ["no more gas alarm reminders", false, "gas alarm reminders"],
    ["we don't need the furnace check", false, "the furnace check"],
  ])("%s", (text, on, about) => {
    expect(careIn(text)).toEqual({ care: "some", on, about, surely: true });
  });

  it("is not sure when the thing itself may be meant", () => {
    expect(careIn("turn on the water heater")).toMatchObject({ about: "the water heater", surely: false });
  });

  it.each([
    "took care of the leak at the sink",
    "checked the tires this morning",
    "switched the fridge off and on again",
    "the care home called",
    "keep an eye on the roof seam",
    "keep an eye on the wheel bearing it ran warm",
    "switch on the pump side is broken",
    "remind me to buy sealant",
    "what did I last do to the bearings?",
  ])("not %s", (text) => {
    expect(careIn(text)).toBeUndefined();
  });
});

describe("an answer to the offer of care", () => {
  it.each([
    ["yes please", "all"],
    ["all of them", "all"],
    ["Sure, go ahead", "all"],
    ["let me pick", "pick"],
    ["row by row", "pick"],
    ["no thanks", "none"],
    ["not now", "none"],
    ["patched the tank", undefined],
    ["all tires are new", undefined],
  ])("%s", (text, answer) => {
    expect(careAnswerIn(text)).toBe(answer);
  });
});
