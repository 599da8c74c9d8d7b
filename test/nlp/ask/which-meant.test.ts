import { describe, expect, it } from "vitest";
import { ask } from "../../../nlp/ask/ask.ts";
import { topicOf } from "../../../nlp/ask/topic.ts";
import { EMPTY_TOPIC } from "../../../shared/memory/query.ts";
import type { Moment } from "../../../shared/reading.ts";

const MOMENT: Moment = { said: "2025-05-10T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };

describe("which try", () => {
  it.each([
    ["what did i use the second time i went at the gutter", { nth: 2 }],
    ["when was the third go at the awning arm", { nth: 3 }],
    ["what was in that 2nd patch on the roof", { nth: 2 }],
    ["what did we do on the frame the one before the welding", { before: ["weld"] }],
    ["when did i do the front seam, the try before that", { before: [] }],
  ])("%s", (text, attempt) => {
    expect(ask(text, MOMENT, null)).toMatchObject({ ask: "last", attempt, topic: { actions: [] } });
  });

  it.each([
    "when did i seal the second window",
    "what did i do before the trip to the roof",
    "when did the roof leak a second time",
    "what did i do to the awning before winter",
  ])("is not said: %s", (text) => {
    expect(ask(text, MOMENT, null)).not.toHaveProperty("attempt");
  });
});

describe("a whole system named with things of it", () => {
  it.each([
    ["what did everything to do with the gas come to, the bottles and the stove and so on", "gas"],
    ["how much on running gear, you know the springs and the brakes", "running-gear"],
    ["what have i laid out on the plumbing, taps and pump and all", "water"],
  ])("%s: %s", (text, system) => {
    expect(topicOf(text).systems).toEqual([system]);
  });

  it.each([
    "is there water in the furnace and the floor",
    "what have i spent on the gas stove",
    "did water get in by the window and the door",
  ])("is none: %s", (text) => {
    expect(topicOf(text).systems).toEqual([]);
  });
});

describe("what is asked about", () => {
  it("is not what it is set against", () => {
    expect(ask("did i ever replace the drum, not only adjust it", MOMENT, null)).toMatchObject({
      topic: { actions: ["replace"] },
    });
    expect(ask("who did the roof, the shop or just me", MOMENT, null)).toMatchObject({ focus: "who" });
  });

  it("is what a battery is in", () => {
    const named = (text: string) => topicOf(text).named[0]?.component;
    expect(named("did i put a new battery in the smoke alarm")).toBe("smoke-alarm");
    expect(named("when did i change the battery by the smoke alarm")).toBe("battery");
  });

  it("is not what it did", () => {
    expect(topicOf("how often it started to leak after that").named).toEqual([]);
    expect(topicOf("where was the leak").named).not.toEqual([]);
  });

  it("is the roof where the top is, and the window where its top is", () => {
    const named = (text: string) => topicOf(text).named[0]?.component;
    expect(named("is the top still sound")).toBe("roof");
    expect(named("is the top of the window still sound")).toBe("window");
  });

  it("is done by whoever it was", () => {
    expect(topicOf("what was done this year by us or by anybody").who).toBeNull();
    expect(topicOf("what was done this year by us").who).toBe("me");
  });

  it("is no work where money was put in", () => {
    expect(topicOf("all the money we put in the fridge").actions).toEqual([]);
    expect(topicOf("what fan did we put in the fridge").actions).not.toEqual([]);
  });

  it("is how something is, and not what is due", () => {
    const text = "is the bottom okay, the sheet under there that i put up, what do i have to say to a buyer";
    expect(ask(text, MOMENT, null)).toMatchObject({ ask: "holding" });
  });

  it("is not the place asked about before where those are the things themselves", () => {
    const question = {
      ask: "holding",
      topic: { ...EMPTY_TOPIC, named: [{ component: "floor", sure: 1 }], where: ["rear"] },
      order: "newest",
    } as const;
    expect(
      ask("did i ever get one of those alarms for fumes", MOMENT, { question, fresh: true }),
    ).toMatchObject({
      topic: { where: [] },
    });
  });
});
