import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import { understand } from "../../../nlp/understand/understand.ts";
import { EMPTY_SCENE } from "../../../shared/memory/scene.ts";
import { after, MOMENT, meant, putRightBy } from "./after-note.ts";

describe("what puts right a note just told", () => {
  it("names what went in where all that was noted is denied", () => {
    expect(meant("packed the bearings with lithium grease", "not lithium, marine grease")).toMatchObject({
      is: "correct",
      correction: { changes: [{ change: "materials", add: ["marine grease"] }] },
    });
  });

  it("says that it holds although it begins with a no", () => {
    const said = meant("resealed the skylight with lap sealant today", "no it holds now");
    expect(JSON.stringify(said)).toContain("holding");
  });

  it("is no word on a fourth record where one was shown", () => {
    const said = meant("replaced the window stay on saturday", "sorry, it was the friday, the fourth");
    expect(said.is === "correct" && said.correction.target.by).not.toBe("number");
  });
});

describe("a question with a part that only describes", () => {
  it("makes no note of it", () => {
    const said = understand("first time i sealed the corner trim, when was that", MOMENT, EMPTY_SCENE);
    expect(said).toMatchObject({ is: "ask", rest: null });
  });
});

describe("words that only point", () => {
  it("keep the thing that a place is told by apart from the thing worked on", () => {
    const said = putRightBy(
      "sealed the window over the sink today",
      "sorry, that window isn't over the sink, it's by the stove",
    );
    expect(said).toContain("by the stove");
    expect(said).not.toContain('"component"');
  });

  it("keep the time of the record apart from a new one", () => {
    const said = putRightBy(
      "greased the hubs with lithium grease on the 12th of september",
      "the hubs in september, it wasn't lithium grease, it was marine grease",
    );
    expect(said).toContain("marine grease");
    expect(said).not.toContain('"change":"date"');
  });

  it("keep what stuff came in apart from the stuff", () => {
    const said = putRightBy(
      "oiled the entry step with silicone grease today",
      "it was sewing machine oil I used not silicone grease, the tin was empty",
    );
    expect(said).toContain("sewing machine oil");
    expect(said).not.toContain('"tin"');
  });
});

describe("where on a thing stuff went", () => {
  it("is no other thing", () => {
    const said = putRightBy(
      "sealed the window beside the table with silicone today",
      "I have now put my spectacles on, and what I squeezed round that frame was polyurethane sealant.",
    );
    expect(said).toContain("polyurethane sealant");
    expect(said).not.toContain('"component"');
  });
});

describe("a loose name", () => {
  it("is what is akin to the thing on record", () => {
    expect(
      putRightBy("changed the smoke alarm by the cooker today, 38 quid", "sorry, the gas one I meant"),
    ).toContain('"gas-alarm"');
  });
});

describe("a sum in place of another", () => {
  it("is no stuff", () => {
    const said = putRightBy(
      "had a sparky put a new breaker in the panel today, 160 dollars",
      "sixteen i said not sixty hundred and sixteen",
    );
    expect(said).not.toContain('"phrase"');
  });
});

describe("what is to stay as it is", () => {
  it("is not taken away", () => {
    const said = putRightBy(
      "sealed the skylight with butyl and new screws",
      "No, leave it how it stands, it is right. I have only argued with my wife about it.",
    );
    expect(said).not.toContain('"remove"');
  });
});

describe("stuff put right", () => {
  it("is once what the label says, though it is said in short as well", () => {
    const said = putRightBy(
      "greased the slide rails with lithium grease",
      "label said silicone spray so silicone it was",
    );
    expect(said).toContain('"add":["silicone spray"]');
  });

  it("is once what is said twice", () => {
    const said = putRightBy("cleaned the toilet with bleach", "that was vinegar, the bottle said vinegar");
    expect(said).toContain('"add":["vinegar"]');
  });

  it("is what stands written, and not what it stands beside", () => {
    const said = putRightBy(
      "sealed the skylight with silicone",
      "no not silicone, I had the lap sealant beside it but on this one is written butyl sealant",
    );
    expect(said).toContain('"add":["butyl sealant"]');
  });

  it("is not what it comes in, nor what became of that", () => {
    const bare = putRightBy(
      "oiled the door hinges with penetrating oil",
      "no it was olive oil, the tin of the other was empty",
    );
    expect(bare).toContain('"add":["olive oil"]');
    const kept = putRightBy(
      "glued the trim with wood glue",
      "it was contact cement, contact adhesive from a tin",
    );
    expect(kept).toContain('"add":["contact adhesive"]');
  });
});

describe("a place put right", () => {
  it.each([
    [
      "patched the window screen by the big bed",
      "wait no its the one by the little bed",
      "by the little bed",
    ],
    [
      "The blind in the bedroom fell, so I screwed it back up.",
      "I should have said the dinette, not the bedroom.",
      "dinette",
    ],
    [
      "gray tank dump valve was dripping so i put new seals in it",
      "ugh no, the black tank dump valve",
      "black tank",
    ],
  ])("leaves the thing as it is: %s", (note, text, where) => {
    const said = meant(note, text);
    const changes = said.is === "correct" ? said.correction.changes : [];
    const to = Object.assign(
      {},
      ...changes.map((change) => (change.change === "fields" ? change.to : {})),
    ) as Record<string, unknown>;
    expect(to["where"]).toBe(where);
    expect(to["component"] ?? "same").not.toBe("furniture");
  });
});

describe("what was used and what was not", () => {
  it("is told apart by what only lay there", () => {
    const said = meant(
      "resealed the roof vent with lap sealant and butyl tape",
      "hold on it was just the lap sealant the butyl tape never got opened",
    );
    expect(said).toMatchObject({
      correction: { changes: [{ change: "materials", add: ["lap sealant"], drop: ["butyl tape"] }] },
    });
  });
});

describe("a day put right", () => {
  it("is told with the one that it was not", () => {
    expect(meant("adjusted the strike on the entry door today", "did that sunday, not today")).toMatchObject({
      correction: { changes: [{ change: "date", to: { on: "2025-09-14" } }] },
    });
  });
});

describe("a sum told again", () => {
  const tires = "tire shop put 4 new tires on today, 412";

  it("puts right what is on record", () => {
    expect(meant(tires, "btw those new tires were 421")).toMatchObject({
      is: "correct",
      correction: { changes: [{ change: "fields", to: { cost: 421 } }] },
    });
  });

  it("is none where it is of new work, or the same", () => {
    expect(meant(tires, "put the new tire on today ninety four dollars").is).toBe("tell");
    expect(meant(tires, "those new tires were 412").is).not.toBe("correct");
  });

  it("is the one that is not on record already", () => {
    const said = JSON.stringify(
      meant("garage put a new brake cable on thursday, 48 quid", "58 that should be, no 48"),
    );
    expect(said).toMatch(/"(?:to|cost)":58/);
    expect(said).not.toContain("48");
  });
});

describe("a day of work that was on the list before", () => {
  it("is that of the work, and not of the list", () => {
    const [meantTo] = read("need to buy a new gas regulator", MOMENT).records;
    const [done] = read("fitted the new gas regulator today, 78 bucks", MOMENT).records;
    if (meantTo === undefined || done === undefined) throw new Error("Both notes tell something.");
    const older = [
      { id: 7, fields: done.fields, words: "fitted the new gas regulator today, 78 bucks" },
      { id: 6, fields: meantTo.fields, words: "need to buy a new gas regulator" },
    ];
    const text = "i gave you the wrong day for the new gas regulator, it went on on the 12th of september";
    expect(understand(text, MOMENT, { ...after("greased the hubs today"), older })).toMatchObject({
      is: "correct",
      correction: { target: { record: 7 } },
    });
  });
});

describe("what seems to name another thing", () => {
  it("is stuff where such stuff went in", () => {
    const said = putRightBy(
      "put a new poly elbow on the fresh tank with thread tape",
      "it's a brass elbow, i had no poly left",
    );
    expect(said).toContain("brass elbow");
    expect(said).not.toContain('"component"');
  });

  it("is what the stuff came in", () => {
    const said = putRightBy(
      "oiled the furnace blower with machine oil",
      "oops wrong bottle, sewing machine oil is what it was",
    );
    expect(said).toContain("sewing machine oil");
    expect(said).not.toContain('"component"');
  });

  it("is where the thing on record is", () => {
    const said = putRightBy(
      "glued the vinyl flooring by the door",
      "the floor was by the shower not the door",
    );
    expect(said).toContain("by the shower");
    expect(said).not.toContain('"component"');
  });
});

describe("work that was not done", () => {
  it("is other work where something else was done instead", () => {
    const said = putRightBy(
      "put a new breakaway switch on today",
      "the new switch is still in the bag, so what i did was clean up the old one",
    );
    expect(said).toContain('"action":"clean"');
    expect(said).not.toContain("remove");
  });
});
