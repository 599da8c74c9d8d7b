import { describe, expect, it } from "vitest";
import { isQuestion } from "../../../nlp/ask/is-question.ts";
import { spelledOut } from "../../../nlp/ask/spelled-out.ts";
import { understand } from "../../../nlp/understand/understand.ts";
import { EMPTY_TOPIC, type Query } from "../../../shared/memory/query.ts";
import { EMPTY_SCENE, type Scene } from "../../../shared/memory/scene.ts";
import type { Moment } from "../../../shared/reading.ts";
import { draft } from "../../shared/memory/rig.ts";

const MOMENT: Moment = { said: "2025-05-10T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };

/** Something is known, and a question may have been asked just now. */
const scene = (asked: Query | null = null): Scene => ({
  ...EMPTY_SCENE,
  older: [{ id: 3, fields: draft({ component: "ladder", action: "tighten" }, 8).fields }],
  asked,
  askedEarlier: asked,
});
const meant = (text: string, asked: Query | null = null) => understand(text, MOMENT, scene(asked));

describe("a question that does not sound like one", () => {
  it.each([
    ["ever grease the slide rails", "ever"],
    ["we ever swap the bulb in the porch light", "ever"],
    ["all the cash i sank in that fridge", "cost"],
    ["the buyer also wants to know whether the frame was ever welded, a proper repair I mean", "ever"],
    ["my brother keeps asking when did we do the tires", "last"],
    ["and on this old receipt what month we did the awning, the ink has run", "last"],
    ["im off to the hardware store anyway so do i need to pick anything up for the camper", "buy"],
    ["the awning share of that", "cost"],
    ["anode date", "last"],
    ["the roof seam is still good, but is it", "holding"],
  ])("%s: %s", (text, kind) => {
    expect(meant(text)).toMatchObject({ is: "ask", query: { ask: kind } });
  });

  it.each([
    "ever since i greased the hubs they run quiet",
    "we ever get a dry day ill seal the roof seam",
    "all the money i put in that roof air and it still rattles",
    "the neighbour asks how i am and i told him i resealed the roof",
    "replaced the tire, checked the date",
  ])("is none: %s", (text) => {
    expect(isQuestion(text, MOMENT)).toBe(false);
  });

  it("is heard in clipped words", () => {
    expect(spelledOut("awning fixes tht faild, no of")).toBe("awning fixes that failed, number of");
    expect(spelledOut("no of course not")).toBe("no of course not");
  });
});

describe("a question asked while leaving", () => {
  it("is answered, and no departure", () => {
    expect(meant("what is there to buy for her, my son is leaving for the village today")).toMatchObject({
      is: "ask",
      query: { ask: "buy" },
    });
    for (const told of ["we are leaving for the coast on friday", "we leave on 20 May 2026 for four months"])
      expect(understand(told, MOMENT, EMPTY_SCENE)).toMatchObject({ is: "leave" });
  });
});

describe("why a question is asked", () => {
  it("makes no note", () => {
    const text =
      "just so i know, that rubber strip along the baggage door, is it still holding as far as you know";
    expect(meant(text)).toMatchObject({ is: "ask", rest: null, query: { ask: "holding" } });
  });

  it("leaves a list that was shown alone where it asks how one thing is", () => {
    const shown: Query = { ask: "buy", topic: EMPTY_TOPIC };
    expect(meant("and is it still dry", shown)).toMatchObject({ query: { ask: "holding" } });
  });
});

describe("a question cut short", () => {
  const asked: Query = {
    ask: "cost",
    topic: EMPTY_TOPIC,
    period: { from: "2024-01-01", to: "2025-01-01", said: "2024" },
    of: "all",
  };

  it("names another thing, whatever could be read in it", () => {
    expect(meant("and on the hot water", asked)).toMatchObject({
      is: "ask",
      query: { ask: "cost", topic: { named: [{ component: "water-heater" }] } },
    });
    expect(meant("and flushed the hot water heater", asked)).toMatchObject({ is: "tell" });
  });

  it("asks of all the time there was", () => {
    expect(meant("n the propane side of it, all the yrs", asked)).toMatchObject({
      is: "ask",
      query: { ask: "cost", topic: { systems: ["gas"] }, period: null },
    });
  });

  it("asks of a season of the year before", () => {
    expect(meant("tell her what got done in the spring of that year", asked)).toMatchObject({
      query: { ask: "list", period: { from: "2024-03-01", to: "2024-06-01" } },
    });
  });
});

describe("what puzzles whoever tells it", () => {
  it.each(["the gas alarm in there keeps chirping and i dont know why"])("%s: nothing asked", (text) => {
    expect(meant(text).is).toBe("tell");
  });
});
