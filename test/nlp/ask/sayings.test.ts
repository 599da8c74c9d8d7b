import { describe, expect, it } from "vitest";
import { ask } from "../../../nlp/ask/ask.ts";
import { followUp } from "../../../nlp/ask/follow-up.ts";
import { isQuestion } from "../../../nlp/ask/is-question.ts";
import { periodIn } from "../../../nlp/ask/period.ts";
import { topicOf } from "../../../nlp/ask/topic.ts";
import { EMPTY_TOPIC } from "../../../shared/memory/query.ts";
import type { Moment } from "../../../shared/reading.ts";

const MOMENT: Moment = { said: "2025-05-10T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
const named = (text: string) => topicOf(text).named.map(({ component }) => component);

describe("a turn of phrase", () => {
  it.each([
    "what is still on the back burner",
    "how much money has gone down the drain",
    "off the top of my head, what is left",
    "what has it cost, an arm and a leg",
    "what is the next step",
    "is it still steady",
    "what did i pick up at the co op",
    "what have i still got hanging over my head",
  ])("names no thing: %s", (text) => {
    expect(named(text)).toEqual([]);
  });

  it.each([
    ["when did i clean the back burner on the stove", "stove"],
    ["is the drain still clear", "sink"],
    ["when did i grease the steady", "stabilizer"],
    ["did i test the co alarm", "co-alarm"],
  ])("is none where the thing is meant: %s", (text, component) => {
    expect(named(text)).toContain(component);
  });

  it("for money taken from somebody tells no work", () => {
    expect(topicOf("what has that seam taken out of my purse").actions).toEqual([]);
    expect(topicOf("when was the pump taken out").actions).not.toEqual([]);
  });

  it("for what was neglected asks what is open", () => {
    expect(ask("so what else have i let slide", MOMENT, null)).toMatchObject({ ask: "open" });
  });
});

describe("one whose place it is", () => {
  it("is nobody who did the work", () => {
    expect(topicOf("did i do anything about the leg on the driver's side").who).toBeNull();
    expect(topicOf("who swapped the lamp by the kids beds").who).toBeNull();
    expect(topicOf("did the kids fit the lamp").who).not.toBeNull();
  });
});

describe("how a thing is, asked behind its name", () => {
  it.each([
    ["that plastic bubble in the roof over the bath is it tight", true],
    ["the seal i put round the sink has it held up", true],
    ["did the oil shut that fan up", true],
    ["the seal i put round the sink is tight", false],
  ])("%s: %s", (text, asks) => {
    expect(isQuestion(text, MOMENT)).toBe(asks);
  });
});

describe("how often", () => {
  it("fixes gave out is asked where they are told to have", () => {
    expect(ask("how many of my repairs to that little spout have failed", MOMENT, null)).toMatchObject({
      ask: "count",
      of: "failures",
    });
    expect(ask("how many repairs have i done on the awning", MOMENT, null)).toMatchObject({
      ask: "count",
      of: "work",
    });
  });
});

describe("fasteners named in a question", () => {
  it("are no stuff that went in where they are there already", () => {
    expect(topicOf("did i ever go round the nuts on the rims").materials).toEqual([]);
    expect(topicOf("have we ever had the pin greased").materials).toEqual([]);
    expect(topicOf("did i use the stainless screws on the awning").materials).toEqual(["stainless screw"]);
  });
});

describe("a time asked about", () => {
  it("is a calendar year said in words", () => {
    expect(periodIn("what did i spend in the calendar year twenty twenty four", MOMENT).period).toEqual({
      from: "2024-01-01",
      to: "2025-01-01",
      said: "in the calendar year 2024",
    });
  });

  it("is all there was where it runs from the start, whatever was asked before", () => {
    const before = {
      ask: "cost",
      of: "all",
      topic: { ...EMPTY_TOPIC, named: [{ component: "roof", sure: 1 }] },
      period: { from: "2024-01-01", to: "2025-01-01", said: "in 2024" },
    } as const;
    expect(followUp("and plumbing, all of it since the start", MOMENT, before)).toMatchObject({
      period: null,
      topic: { systems: ["water"] },
    });
    expect(followUp("and plumbing", MOMENT, before)).toMatchObject({ period: before.period });
  });
});

describe("an it that points at nothing", () => {
  it("leaves the thing asked about before alone", () => {
    const question = { ask: "last", focus: "who", order: "newest", period: null } as const;
    const hitch = { ...EMPTY_TOPIC, named: [{ component: "hitch", sure: 1 }] } as const;
    const before = { question: { ...question, topic: hitch }, fresh: true };
    const named = (text: string) => {
      const found = ask(text, MOMENT, before);
      return "topic" in found ? found.topic.named.map(({ component }) => component) : [];
    };
    expect(named("when was it i first taped up the top")).not.toContain("hitch");
    expect(named("when was it last done")).toContain("hitch");
  });
});

describe("what hangs on", () => {
  it("is how it holds, and no work", () => {
    expect(topicOf("which of my goes has hung on longest").actions).toEqual([]);
    expect(topicOf("when did i hang the blind").actions).not.toEqual([]);
  });
});

describe("money that a thing has cost", () => {
  it("is asked of what the question before was about", () => {
    const skylight = { ...EMPTY_TOPIC, named: [{ component: "skylight", sure: 1 }] } as const;
    const before = { question: { ask: "longest", order: "longest", topic: skylight }, fresh: true } as const;
    expect(ask("and what has it cost me in all", MOMENT, before)).toMatchObject({ topic: skylight });
    expect(ask("and what have i spent in all", MOMENT, before)).toMatchObject({ topic: EMPTY_TOPIC });
  });
});

describe("the second time", () => {
  it("is a try where it ends what is asked of one", () => {
    expect(ask("what did i fix the bed rail on with the second time", MOMENT, null)).toMatchObject({
      attempt: { nth: 2 },
    });
  });
});
