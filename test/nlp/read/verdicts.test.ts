import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import { scan } from "../../../nlp/read/scan.ts";
import verdicts from "./verdicts.json" with { type: "json" };

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

/** The outcome of one piece of work after which something is said. */
const outcomeAfter = (said: string): (string | null)[] =>
  read(`The skylight leaked, so I resealed it with lap sealant in September. ${said}.`, MOMENT).records.map(
    (draft) => draft.fields.outcome,
  );

/** Read as something else: known gaps. */
const GAPS: ReadonlySet<string> = new Set(["nowhere to go till June so we'll find out then"]);

describe("verdicts in people's words", () => {
  it.each(["holding", "partly", "failed", "untested"] as const)("%s", (outcome) => {
    const misread = verdicts[outcome].filter((said) => outcomeAfter(said).join() !== outcome);
    expect(misread.filter((said) => !GAPS.has(said))).toEqual([]);
  });
});

describe("heat and cold", () => {
  it.each([
    ["freezer is warm again", "refrigerator", "failed"],
    ["the shower water is cold again", "water-heater", "failed"],
    ["the milk is cold again", "refrigerator", "holding"],
    ["the hot water is hot again", "water-heater", "holding"],
  ])("%s: trouble only for what it is for", (text, component, outcome) => {
    expect(read(text, MOMENT).records.map(({ fields }) => [fields.component, fields.outcome])).toEqual([
      [component, outcome],
    ]);
  });
});

describe("what goes by itself", () => {
  const [trouble, praise] = [
    "the pump kicks in by itself at night",
    "fixed the step, it folds out by itself",
  ];
  it("is trouble of what is to wait until it is asked for", () => {
    expect(read(trouble, MOMENT).records.map(({ fields }) => fields.kind)).toEqual(["fault"]);
  });
  it("is well of what is to go so", () => {
    expect(read(praise, MOMENT).records.map(({ fields }) => fields.outcome)).toEqual(["holding"]);
  });
});

describe("a mood", () => {
  it("is no work taken apart", () => {
    const said = read("corner trim lifted again, gutted", MOMENT).records;
    expect(said.map(({ fields }) => fields.outcome)).toEqual(["failed"]);
  });
});

describe("trouble that is denied", () => {
  it.each([
    "the fridge has not gone out once",
    "the stove does not go out any more",
    "the pump hasn't cycled on its own since",
    "the slide hasn't stuck again",
    "the hub never got warm",
    "the cord is not even warm",
    "the topper is keeping the water off",
  ])("is told to hold: %s", (text) => {
    expect(scan(text, MOMENT).verdicts.map(({ value }) => value.outcome)).toEqual(["holding"]);
  });

  it("is nothing where something was done on the way", () => {
    expect(scan("stopped on the way down", MOMENT).verdicts).toEqual([]);
    expect(
      scan("the converter is on its way out", MOMENT).verdicts.map(({ value }) => value.outcome),
    ).toEqual(["failed"]);
  });
});

describe("what there is none of", () => {
  it.each([
    ["no hot water this morning", "fault water-heater"],
    ["no water at the kitchen tap", "fault faucet"],
    ["no heat from the furnace", "fault furnace"],
    ["no power at the outlets", "fault outlet"],
    ["no heat in the hubs", "check wheel-bearing"],
    ["no more noise from the bearings", "check wheel-bearing"],
    ["the pump no longer runs", "fault water-pump"],
    ["the window no longer leaks", "check window"],
    ["the step is no longer loose", "check entry-step"],
  ])("is trouble where it is what is wanted: %s", (text, told) => {
    expect(read(text, MOMENT).records.map(({ fields }) => `${fields.kind} ${fields.component}`)).toEqual([
      told,
    ]);
  });
});

describe("trouble in a few plain words", () => {
  it.each([
    ["wheel bearing is hot", "wheel-bearing"],
    ["the left hub is real hot", "wheel-bearing"],
    ["batteries are toast", "battery"],
    ["slide is not going in", "slide-out"],
  ])("is a fault: %s", (text, component) => {
    expect(read(text, MOMENT).records.map(({ fields }) => [fields.kind, fields.component])).toEqual([
      ["fault", component],
    ]);
  });

  it("is none where it is denied", () => {
    expect(
      read("the hubs are not hot", MOMENT).records.filter(({ fields }) => fields.kind === "fault"),
    ).toEqual([]);
  });
});

describe("good that has ended", () => {
  it.each([
    "the ac quit blowing cold right in the middle of supper",
    "the heater gave up blowing hot air before dawn",
    "the patch isnae holding",
    "the pump wasnae working when we got in",
  ])("does not hold: %s", (text) => {
    expect(scan(text, MOMENT).verdicts.map(({ value }) => value.outcome)).toEqual(["failed"]);
  });
});

describe("good that is denied", () => {
  it.each([
    "the patch on the gray tank isn't holding",
    "gray tank patch isnt holding anymore",
    "the roof isn't dry after that rain",
  ])("is bad, though its words are mostly said of what holds: %s", (text) => {
    expect(read(text, MOMENT).records.map(({ fields }) => fields.outcome)).toEqual(["failed"]);
  });

  it("stays good where it is trouble that is denied", () => {
    expect(read("the skylight isn't leaking", MOMENT).records.map(({ fields }) => fields.outcome)).toEqual([
      "holding",
    ]);
  });
});

describe("what a look found", () => {
  it.each([
    ["the left tail light hasn't quit once", "check exterior-light holding"],
    ["the running light never so much as blinked", "check exterior-light holding"],
    ["the step dont rattle when you come up it", "check entry-step holding"],
    ["the ac sounds like a bag of gravel", "fault air-conditioner"],
    ["the microwave has stopped heating", "fault microwave"],
    ["the water heater stopped heating", "fault water-heater"],
  ])("%s", (text, found) => {
    const told = read(text, MOMENT).records.map(({ fields: { kind, component, outcome } }) =>
      [kind, component, ...(outcome === null ? [] : [outcome])].join(" "),
    );
    expect(told).toEqual([found]);
  });

  it("is nothing where only a month is denied", () => {
    expect(scan("it was not last month", MOMENT).verdicts).toEqual([]);
  });
});

describe("what has no part that moves", () => {
  it("is wiped with oil, not greased", () => {
    const [mould] = read(
      "the mould on the ceiling came back so i did it again with clove oil",
      MOMENT,
    ).records;
    expect([mould?.fields.component, mould?.fields.action]).toEqual(["ceiling", "clean"]);
  });
});
