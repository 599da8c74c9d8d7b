import { describe, expect, it } from "vitest";
import { ask } from "../../../nlp/ask/ask.ts";
import { periodIn } from "../../../nlp/ask/period.ts";
import type { Before } from "../../../nlp/ask/question.ts";
import { topicOf } from "../../../nlp/ask/topic.ts";
import { EMPTY_TOPIC, type Period } from "../../../shared/memory/query.ts";

const MOMENT = { said: "2025-03-23T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("the time that a question asks about", () => {
  it.each([
    ["what did i get through in spring o 2024", "2024-03-01", "2024-06-01"],
    ["winter jobs, what got done", "2024-12-01", "2025-03-01"],
    ["what got done in the back half of 2024", "2024-07-01", "2025-01-01"],
    ["what did i do that summer in twenty twenty three", "2023-06-01", "2023-09-01"],
    ["the summer before this one, in 2023, what got done", "2023-06-01", "2023-09-01"],
    ["what did we do in the autumn of last year, not this year's, last year's", "2024-09-01", "2024-12-01"],
    ["list what i did in spring 2024 like march through may", "2024-03-01", "2024-06-01"],
    ["how much have i put into it since the beginning of this year", "2025-01-01", null],
    ["what have i spent since the start of 2024", "2024-01-01", null],
    ["what did she take off me in twenty four all told", "2024-01-01", "2025-01-01"],
    ["what did the year twenty three cost us", "2023-01-01", "2024-01-01"],
    ["what got taken care of that first spring, twenty twenty three", "2023-03-01", "2023-06-01"],
    ["what have i mended in spring of last year, march until may", "2024-03-01", "2024-06-01"],
    ["what got worked on back in 2022, he says i sat in a chair all year", "2022-01-01", "2023-01-01"],
    ["what got done all year", "2025-01-01", "2026-01-01"],
    ["what did i mend the month before last", "2025-01-01", "2025-02-01"],
    ["what got done last year in spring, not this spring the one before", "2024-03-01", "2024-06-01"],
    ["what got done until last weekend", null, "2025-03-15"],
    ["what did i do in summer, 2022", "2022-06-01", "2022-09-01"],
    ["what got worked on in 2023, it is for the christmas letter to my aunt", "2023-01-01", "2024-01-01"],
  ])("%s", (text, from, to) => {
    expect(periodIn(text, MOMENT).period).toMatchObject({ from, to });
  });

  it.each([
    "when did i last put her up for winter",
    "how long ago did we do the tires, it feels like yesterday",
    "what did i get done in twenty four hours",
    "grand total since day one, i square up with my roommate tonight",
  ])("is none: %s", (text) => {
    expect(periodIn(text, MOMENT).period).toBeNull();
  });
});

describe("what a question is about", () => {
  it("is no wheel where the rig is a house on wheels", () => {
    expect(topicOf("what have i spent on my little house on wheels").named).toEqual([]);
  });
  it("is no hitch where the rig is a fifth wheel, but its plate is", () => {
    expect(topicOf("what am i picking up in town for the 5th wheel").named).toEqual([]);
    expect(topicOf("when did i grease the fifth wheel plate").named[0]?.component).toBe("hitch");
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

describe("which of several", () => {
  it.each([
    ["and which one of them gave up the quickest", "shortest"],
    ["which fix on it died the fastest", "shortest"],
    ["and which one lasted the longest", "longest"],
  ] as const)("%s: %s", (text, order) => {
    const question = {
      ask: "count",
      of: "failures",
      topic: { ...EMPTY_TOPIC, named: [{ component: "entry-door", sure: 1 }] },
      period: null,
    } as const;
    expect(ask(text, MOMENT, { question, fresh: true })).toMatchObject({ ask: "longest", order });
  });
  it("counts all that was spent, whatever it was spent on", () => {
    const asked = ask(
      "what has the skylight cost me from start to finish, tape and glue and all",
      MOMENT,
      null,
    );
    expect(asked).toMatchObject({ ask: "cost", topic: { materials: [] } });
  });
});

describe("a time that points back", () => {
  const asking = (period: Period | null, date: string | null = null): Before => ({
    question: { ask: "cost", topic: EMPTY_TOPIC, period, of: "all" },
    fresh: true,
    date,
  });
  const whole = { from: "2023-01-01", to: "2024-01-01", said: "2023" };
  it.each([
    ["what got done in the autumn of that year", asking(whole), "2023-09-01", "2023-12-01"],
    ["what else did we do that year", asking(null, "2022-08-14"), "2022-01-01", "2023-01-01"],
    ["what jobs did i do over that summer", asking(whole), "2023-06-01", "2023-09-01"],
    ["what did i spend that fall", null, "2024-09-01", "2024-12-01"],
    ["what did i do that summer in 2022", asking(whole), "2022-06-01", "2022-09-01"],
  ])("%s", (text, context, from, to) => {
    expect(ask(text, MOMENT, context)).toMatchObject({ period: { from, to } });
  });

  it("is no spring of steel", () => {
    expect(ask("is that spring still holding", MOMENT, asking(whole))).toMatchObject({ ask: "holding" });
    expect(periodIn("what did that spring cost", MOMENT).period).toBeNull();
  });
});
