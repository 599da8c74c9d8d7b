import { describe, expect, it } from "vitest";
import { ask } from "../../../nlp/ask/ask.ts";
import type { Before } from "../../../nlp/ask/question.ts";
import { topicOf } from "../../../nlp/ask/topic.ts";
import { read } from "../../../nlp/read/index.ts";
import { findTimes } from "../../../nlp/time/index.ts";
import { isBareNumber } from "../../../nlp/understand/bare-number.ts";
import { EMPTY_TOPIC } from "../../../shared/memory/query.ts";
import type { Moment } from "../../../shared/reading.ts";

const MOMENT: Moment = { said: "2025-08-03T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
const HITCH: Before = {
  question: {
    ask: "holding",
    topic: { ...EMPTY_TOPIC, named: [{ component: "hitch", sure: 1 }] },
    order: "newest",
  },
  fresh: true,
};

const topicAskedOf = (text: string) => {
  const question = ask(text, MOMENT, null);
  return "topic" in question ? question.topic : EMPTY_TOPIC;
};

describe("what a question is about", () => {
  it("is all of the rig where all is meant, whatever was asked before", () => {
    expect(ask("of all the jobs which one cost the most", MOMENT, HITCH)).toMatchObject({
      ask: "cost",
      topic: { named: [] },
    });
  });

  it("is the thing told of just now, and not the one told of days ago, where money is asked for", () => {
    const named = (before: Before) => ask("what have I spent on it", MOMENT, before);
    expect(named(HITCH)).toMatchObject({ topic: { named: [{ component: "hitch" }] } });
    expect(named({ ...HITCH, fresh: false })).toMatchObject({ topic: { named: [] } });
  });

  it.each([
    ["who by?", "who"],
    ["price?", "cost"],
    ["by whom", "who"],
    ["which day", "when"],
  ])("is the thing asked about before, where nothing but what is wanted is said: %s", (text, focus) => {
    expect(ask(text, MOMENT, HITCH)).toMatchObject({
      ask: "last",
      focus,
      topic: { named: [{ component: "hitch" }] },
    });
  });

  it.each(["when did I drain her", "how much did I spend", "what did craig ever do"])(
    "is not the thing asked about before, where something is said: %s",
    (text) => {
      expect(ask(text, MOMENT, HITCH)).toMatchObject({ topic: { named: [] } });
    },
  );

  it.each([
    ["what did craig ever do", "craig"],
    ["what was it dad did for me", "dad"],
    ["how much went to the mechanic", "mechanic"],
  ])("is the work of one person: %s", (text, who) => {
    expect(topicOf(text).who).toBe(who);
  });

  it("is the work in one place, where a list is asked for", () => {
    expect(ask("what's been done on the left side", MOMENT, null)).toMatchObject({
      ask: "list",
      topic: { named: [], where: ["left"] },
    });
  });

  it("is the thing asked about before, where ways of mending it are weighed and the rig is not named", () => {
    const weighed = (text: string) => ask(text, MOMENT, HITCH);
    for (const text of ["and which of the mends went longest", "longest lasting fix on same"])
      expect(weighed(text)).toMatchObject({ ask: "longest", topic: { named: [{ component: "hitch" }] } });
    expect(weighed("which fix lasted longest on the whole rig")).toMatchObject({ topic: { named: [] } });
  });

  it("is a year named without more", () => {
    expect(ask("whats 2025 cost me so far", MOMENT, null)).toMatchObject({ period: { from: "2025-01-01" } });
  });

  it("is not the one who is to be told", () => {
    expect(topicOf("what did i do to the furnace, i want to tell the guy next door").who).toBeNull();
    expect(topicOf("did the guy do the furnace").who).toBe("guy");
  });
});

describe("small words", () => {
  it.each([
    ["the summer of last year", "2024-22"],
    ["march of 2023", "2023-03"],
  ])("make one time of %s", (text, edtf) => {
    expect(findTimes(text, MOMENT).map((time) => time.edtf)).toEqual([edtf]);
  });

  it("leave a price a price", () => {
    expect(isBareNumber("a new one is 260")).toBe(true);
    expect(isBareNumber("replaced it for 260")).toBe(false);
  });

  it("make no trouble of a trip", () => {
    const [draft] = read("need a new spare tire before the trip", MOMENT).records;
    expect(draft?.fields).toMatchObject({ kind: "todo", component: "tire", fault: null });
  });
});

describe("how often", () => {
  it.each([
    "how many times did I get beat by the damp coming in at the hatch",
    "how many of my cures for the cold pipe came to nothing",
    "how often was it wet again under the tap after my repair",
    "how many goes at the step were in vain",
  ])("is how often it gave out where no work is counted: %s", (text) => {
    expect(ask(text, MOMENT, null)).toMatchObject({ ask: "count", of: "failures" });
  });

  it.each(["how many times have I greased the hubs", "how many goes have I had at sealing the hatch"])(
    "is how often it was done where work is: %s",
    (text) => {
      expect(ask(text, MOMENT, null)).toMatchObject({ ask: "count", of: "work" });
    },
  );
});

describe("what is not asked about", () => {
  it("is what is to be left out", () => {
    const { where } = topicAskedOf(
      "what has the street side slide seal cost me, leave the curb side out of it",
    );
    expect(where.join(" ")).not.toContain("curb");
  });

  it("is who only has something to say", () => {
    const { who } = topicAskedOf(
      "my brother in law says i never do nothing but sit so what all did i get done on this camper over the summer",
    );
    expect(who).toBeNull();
    expect(topicAskedOf("what jobs did my brother do over the summer").who).toBe("brother");
  });
});

it("asks whether new parts are any good, and not what was done", () => {
  expect(ask("that tape along the gutter, was it any use", MOMENT, null)).toMatchObject({
    ask: "holding",
    topic: { named: [{ component: "gutter" }] },
  });
});
