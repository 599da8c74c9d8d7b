import { describe, expect, it } from "vitest";
import { ask } from "../../../nlp/ask/ask.ts";
import { periodIn } from "../../../nlp/ask/period.ts";
import { topicOf } from "../../../nlp/ask/topic.ts";
import { EMPTY_TOPIC } from "../../../shared/memory/query.ts";

const MOMENT = { said: "2025-03-23T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("the time that a question asks about", () => {
  it.each([
    ["what did i get through in spring o 2024", "2024-03-01", "2024-06-01"],
    ["winter jobs, what got done", "2024-12-01", "2025-03-01"],
    ["what got done in the back half of 2024", "2024-07-01", "2025-01-01"],
  ])("%s", (text, from, to) => {
    expect(periodIn(text, MOMENT).period).toMatchObject({ from, to });
  });

  it.each([
    "when did i last put her up for winter",
    "how long ago did we do the tires, it feels like yesterday",
  ])("is none: %s", (text) => {
    expect(periodIn(text, MOMENT).period).toBeNull();
  });
});

describe("what a question is about", () => {
  it("is no wheel where the rig is a house on wheels", () => {
    expect(topicOf("what have i spent on my little house on wheels").named).toEqual([]);
  });
  it("is the one who did it, and not who did not", () => {
    expect(topicOf("which things were done by the dealer and not by me").who).toBe("dealer");
  });
  it("is the rig where money of a time is asked for", () => {
    const question = {
      ask: "holding",
      topic: { ...EMPTY_TOPIC, named: [{ component: "tow-plug", sure: 1 }] },
      order: "newest",
    } as const;
    const asked = ask("how much did we spend on it in 2024", MOMENT, { question, fresh: true });
    expect(asked).toMatchObject({ ask: "cost", topic: { named: [] } });
  });
});
