import { describe, expect, it } from "vitest";
import { createDesk } from "../help/desk.ts";

const told = (...notes: readonly string[]) => {
  const desk = createDesk();
  for (const note of notes) desk.say(note);
  return desk;
};

describe("a sum that comes on top", () => {
  it.each(["make that ten more, there was shipping", "add ten to that, i forgot the shipping"])(
    "is added to the one that is on record: %s",
    (text) => {
      const desk = told("swapped the water pump today, 89 bucks, and greased the hubs");
      expect(desk.say(text)[0]).toContain("$89 → $99");
    },
  );

  it("is no charge of a battery", () => {
    const desk = told("replaced the tires today, 760 dollars");
    const [reply] = desk.say("make it thirty more, they charged for the balancing");
    expect(reply).toContain("$760 → $790");
    expect(reply).not.toContain("Work:");
  });
});

describe("a sum and a few words right after a note", () => {
  it("takes the place of the one that is on record", () => {
    const desk = told("swapped the elbow under the sink, 85 dollars");
    expect(desk.say("$58 haha typing too fast")[0]).toContain("$85 → $58");
  });

  it("does not where it is what something else came to", () => {
    const desk = told("swapped the elbow under the sink, 85 dollars");
    desk.say("$12 for a burger, can you believe it");
    expect(desk.say("what did the elbow cost")[0]).toContain("$85");
  });
});

describe("stuff that was got", () => {
  it.each(["picked up the lap sealant", "the lap sealant came in the post"])(
    "is off the shopping list, and its job still open: %s",
    (text) => {
      const desk = told("need two tubes of lap sealant for the roof seam");
      expect(desk.say("what do i need to buy")[0]).toContain("lap sealant");
      expect(desk.say(text)[0]).toContain("Off the shopping list");
      expect(desk.say("what do i need to buy")[0]).toContain("Nothing to buy");
      expect(desk.say("what's open")[0]).toContain("oof seam");
    },
  );

  it("is wanted again once that is taken back", () => {
    const desk = told("need two tubes of lap sealant for the roof seam", "picked up the lap sealant", "undo");
    expect(desk.say("what do i need to buy")[0]).toContain("lap sealant");
  });

  it("is nothing while it is not there yet, or not on the list", () => {
    const desk = told("need two tubes of lap sealant for the roof seam");
    desk.say("haven't bought the lap sealant yet");
    desk.say("bought a new kettle");
    expect(desk.say("what do i need to buy")[0]).toContain("lap sealant");
  });
});

describe("a plan that is taken back", () => {
  it("is named as one", () => {
    const desk = told("need to seal the roof seam");
    expect(desk.say("undo")[0]).toContain("Roof seam (to seal)");
  });
});

describe("right after a note in which no work was found", () => {
  const afterSunset = () => {
    const desk = told("put a new leaf in the left spring, 410");
    desk.clock.set(desk.clock.now().add({ hours: 72 }));
    desk.say("what a sunset, the whole sky on fire");
    return desk;
  };

  it.each(["hang on that was yesterday", "no it was forty dollars"])(
    "leaves alone what was told days before: %s",
    (text) => {
      const desk = afterSunset();
      desk.say(text);
      expect(desk.say("what did i pay for the spring")[0]).toContain("$410");
      expect(desk.say("when did i do the spring")[0]).toContain("14 May");
    },
  );

  it("puts right what it names", () => {
    expect(afterSunset().say("the spring was 420")[0]).toContain("$410 → $420");
  });
});

describe("a look, where no work is known", () => {
  it("is what was done last", () => {
    const desk = told("pressed the smoke alarm button yesterday, it shrieks");
    expect(desk.say("what did i last do to the smoke alarm")[0]).toMatch(/^Smoke alarm: tested yesterday/);
    expect(desk.say("when did I last make the smoke alarm shriek")[0]).toContain("tested yesterday");
  });

  it("is no such work as is asked for", () => {
    const desk = told("pressed the smoke alarm button yesterday, it shrieks");
    expect(desk.say("when did i last replace the smoke alarm")[0]).toMatch(
      /^I have no such work on the smoke alarm on record\..*tested yesterday/s,
    );
  });
});

describe("money and lists of the whole rig", () => {
  const spent = () =>
    told("replaced the tires in march 2025, 760 dollars", "new water pump in june 2025 for 88");

  it.each([
    "a flat on the coast would be dearer. what went into the caravan in 2025?",
    "how much money went into my place in 2025",
  ])("are asked of all of it: %s", (text) => {
    expect(spent().say(text)[0]).toMatch(/^\$848 in 2025/);
  });

  it.each([
    "which things were worked on that year, 2025 i mean",
    "i'm drawing a calendar for next year, what did i get done in 2025",
  ])("are of the time that is meant: %s", (text) => {
    const desk = spent();
    desk.say("what did i spend in 2024");
    expect(desk.say(text)[0]).toMatch(/^2 entries in 2025:/);
  });

  it("are what is open where only the jobs are asked for", () => {
    const desk = told("replaced the tires, 760 dollars", "need to seal the roof seam");
    expect(desk.say("jobs?")[0]).toMatch(/^Open, 1 thing:.*roof seam/s);
  });
});

describe("what is taken off", () => {
  it("announces no trip", () => {
    const desk = told("plug for the power cable, 14 dollars, boxing day");
    const [reply] = desk.say("Boxing Day plug job was the shed extension, not the van's. Take it off");
    expect(reply).not.toMatch(/^Leaving/);
    expect(desk.say("off to the coast on the 12th of june for two weeks")[0]).toMatch(/^Leaving/);
  });
});

describe("the same as before, and not another", () => {
  it("is put together with what was told before", () => {
    const desk = told("replaced the tire last week", "replaced a tire today");
    expect(desk.say("the same tire i gave you last week, not another one")[0]).toMatch(/^Put together/);
  });
});
