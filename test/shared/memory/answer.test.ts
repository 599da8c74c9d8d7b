import { describe, expect, it } from "vitest";
import { EMPTY_TOPIC, type Query, type Topic } from "../../../shared/memory/query.ts";
import { Rig, topic } from "./rig.ts";

const YEAR_2025 = { from: "2025-01-01", to: "2026-01-01", said: "in 2025" };

const last = (about: Topic, more: Partial<Extract<Query, { ask: "last" }>> = {}): Query => ({
  ask: "last",
  topic: about,
  period: null,
  focus: "what",
  order: "newest",
  ...more,
});

/** Two seasons of a rig, told in words of our own; what is right below was worked out by hand from these lines. */
const kept = () => {
  const rig = new Rig();
  rig.tell("2024-04-13", "resealed the front roof seam, thirty one", {
    component: "roof-seam",
    where: "front",
    action: "seal",
    materials: ["self-leveling sealant"],
    date: "2024-04-13",
    cost: 31,
  });
  rig.tell("2024-05-31", "glued the fridge door seal back with contact cement", {
    component: "refrigerator",
    action: "refasten",
    materials: ["contact cement"],
    date: "2024-05-31",
    fault: "seal loose",
  });
  rig.tell("2024-07-05", "fridge seal came loose again, silicone this time", {
    component: "refrigerator",
    action: "refasten",
    materials: ["silicone"],
    date: "2024-07-05",
    fault: "came loose again",
  });
  rig.tell("2025-08-16", "fridge seal is hanging down again so a new one, 36", {
    component: "refrigerator",
    action: "replace",
    materials: ["door seal"],
    date: "2025-08-16",
    cost: 36,
    fault: "hanging down again",
  });
  rig.tell("2025-09-01", "fridge seal still tight", {
    kind: "check",
    component: "refrigerator",
    outcome: "holding",
    date: "2025-09-01",
  });
  rig.tell("2025-09-02", "porch light has quit", {
    kind: "fault",
    component: "exterior-light",
    fault: "quit",
    date: "2025-09-02",
  });
  rig.tell("2025-09-03", "must order a brake magnet, 45 or so", {
    kind: "todo",
    component: "brake",
    action: "replace",
    materials: ["brake magnet"],
    cost: 45,
  });
  rig.tell("2025-09-04", "have to straighten the step", {
    kind: "todo",
    component: "entry-step",
    action: "adjust",
  });
  return rig;
};

const things = (rig: Rig, query: Query) => rig.ask(query).records.map((record) => record.fields.component);

describe("the last work", () => {
  it("is the newest on the thing", () => {
    expect(kept().ask(last(topic("refrigerator"))).records[0]?.id).toBe(4);
  });
  it("is the first when the first is asked for", () => {
    expect(kept().ask(last(topic("refrigerator"), { order: "oldest" })).records[0]?.id).toBe(2);
  });
  it("is of the action asked about", () => {
    const glued = { ...topic("refrigerator"), actions: ["refasten"] as const };
    expect(kept().ask(last(glued)).records[0]?.id).toBe(3);
  });
  it("is an honest nothing with the nearest things when the thing was never worked on", () => {
    const answer = kept().ask(last(topic("brake")));
    expect(answer).toMatchObject({ records: [], because: "only-planned" });
    expect(answer.nearest.map((record) => record.fields.component)).toEqual(["brake"]);
  });
  it("is found in the words of the notes when no name fits", () => {
    const about = { ...EMPTY_TOPIC, words: ["thirty", "resealed"], all: ["thirty", "resealed"] };
    expect(kept().ask(last(about)).records[0]?.id).toBe(1);
  });
  it("takes a doubtful name only when the sure one finds nothing", () => {
    const about: Topic = {
      ...EMPTY_TOPIC,
      named: [
        { component: "roof-vent", sure: 0.8 },
        { component: "roof-seam", sure: 0.6 },
      ],
    };
    expect(kept().ask(last(about)).records[0]?.fields.component).toBe("roof-seam");
  });
  it("leaves out other places of the thing", () => {
    const about = { ...topic("roof-seam"), where: ["rear"] };
    expect(kept().ask(last(about)).records).toEqual([]);
  });
});

describe("yes or no", () => {
  const ever = (about: Topic): Query => ({ ask: "ever", topic: about, period: null });
  it("was it ever done", () => {
    expect(kept().ask(ever({ ...topic("refrigerator"), actions: ["replace"] })).verdict).toBe("yes");
    expect(kept().ask(ever({ ...topic("roof-seam"), actions: ["replace"] })).verdict).toBe("no");
    expect(kept().ask(ever(topic("awning")))).toMatchObject({ verdict: "no", records: [] });
  });
  it("counts an intention as not done", () => {
    expect(kept().ask(ever(topic("brake")))).toMatchObject({ verdict: "no", because: "only-planned" });
  });
  it("is it holding: the present fix, or the one named", () => {
    const rig = kept();
    expect(rig.ask({ ask: "holding", topic: topic("refrigerator"), order: "newest" }).verdict).toBe("yes");
    const silicone = { ...topic("refrigerator"), materials: ["silicone"] };
    expect(rig.ask({ ask: "holding", topic: silicone, order: "newest" })).toMatchObject({
      verdict: "no",
      records: [{ id: 3 }],
    });
  });
  it("says that nothing was heard since", () => {
    expect(kept().ask({ ask: "holding", topic: topic("roof-seam"), order: "newest" })).toMatchObject({
      verdict: "yes",
      because: "not-told-how-it-holds",
    });
  });
  it("is not fooled by a fault found later", () => {
    expect(kept().ask({ ask: "holding", topic: topic("exterior-light"), order: "newest" }).verdict).toBe(
      "no",
    );
  });
});

describe("counting", () => {
  it("counts fixes that gave out, not the fault before the first", () => {
    expect(
      kept().ask({ ask: "count", of: "failures", topic: topic("refrigerator"), period: null }).count,
    ).toBe(2);
  });
  it("counts a failure once, however often it is told", () => {
    const rig = kept();
    rig.tell("2025-10-01", "fridge seal has come off", {
      kind: "check",
      component: "refrigerator",
      outcome: "failed",
      date: "2025-10-01",
    });
    rig.tell("2025-10-02", "fridge seal is off", {
      kind: "check",
      component: "refrigerator",
      outcome: "failed",
      date: "2025-10-02",
    });
    expect(rig.ask({ ask: "count", of: "failures", topic: topic("refrigerator"), period: null }).count).toBe(
      3,
    );
  });
  it("counts pieces of work", () => {
    expect(kept().ask({ ask: "count", of: "work", topic: topic("refrigerator"), period: null }).count).toBe(
      3,
    );
  });
});

describe("lists", () => {
  const about = (more: Partial<Query>): Query =>
    ({ ask: "list", topic: EMPTY_TOPIC, period: null, ...more }) as Query;
  it("hold the work of a period by its date", () => {
    expect(things(kept(), about({ period: YEAR_2025 }))).toEqual(["refrigerator"]);
  });
  it("hold the work on a system", () => {
    expect(things(kept(), about({ topic: { ...EMPTY_TOPIC, systems: ["shell"] } }))).toEqual(["roof-seam"]);
  });
  it("put a season where the rig is", () => {
    const south = new Rig("south");
    south.tell("2025-03-01", "sealed the skylight in summer", {
      component: "skylight",
      action: "seal",
      date: "2024-22",
    });
    const summer = { from: "2024-12-01", to: "2025-03-01", said: "last summer" };
    expect(things(south, about({ period: summer }))).toEqual(["skylight"]);
  });
  it("open: every todo and fault not dealt with", () => {
    expect(new Set(things(kept(), { ask: "open", topic: EMPTY_TOPIC, period: null }))).toEqual(
      new Set(["exterior-light", "brake", "entry-step"]),
    );
  });
  it("open: a fix that gave out and was left so stands beside it", () => {
    const rig = kept();
    rig.tell("2025-10-01", "fridge seal has come off", {
      kind: "check",
      component: "refrigerator",
      outcome: "failed",
      date: "2025-10-01",
    });
    const { records, letGo } = rig.ask({ ask: "open", topic: EMPTY_TOPIC, period: null });
    expect(records.map(({ fields }) => fields.component)).not.toContain("refrigerator");
    expect(letGo.map(({ fields }) => fields.component)).toEqual(["refrigerator"]);
  });
  it("to buy: only what is to be replaced or bought", () => {
    expect(things(kept(), { ask: "buy", topic: EMPTY_TOPIC })).toEqual(["brake"]);
  });
  it("are empty, not invented, when nothing is open", () => {
    expect(new Rig().ask({ ask: "open", topic: EMPTY_TOPIC, period: null })).toMatchObject({
      records: [],
      because: "nothing-open",
    });
  });
});

describe("money", () => {
  it("is what records of work done say; what is only planned is not spent", () => {
    expect(kept().ask({ ask: "cost", topic: EMPTY_TOPIC, period: null, of: "all" }).cost).toBe(67);
  });
  it("goes by the date of the work", () => {
    expect(kept().ask({ ask: "cost", topic: EMPTY_TOPIC, period: YEAR_2025, of: "all" }).cost).toBe(36);
  });
  it("is 0 with a word on why when none was noted", () => {
    expect(kept().ask({ ask: "cost", topic: topic("frame"), period: null, of: "all" })).toMatchObject({
      cost: 0,
      because: "no-cost-noted",
    });
  });
});

describe("lives", () => {
  it("run to the failure, or to the last good look", () => {
    const { lives } = kept().ask({ ask: "longest", topic: topic("refrigerator"), order: "longest" });
    // 5 July 2024 to 16 August 2025 is 407 days, 31 May to 5 July 35, 16 August to 1 September 16.
    expect(lives.map(({ record, lived, held }) => [record.id, lived.days, held])).toEqual([
      [3, 407, false],
      [2, 35, false],
      [4, 16, true],
    ]);
  });

  it("of cures come before upkeep of which nothing was heard", () => {
    const rig = new Rig();
    rig.tell("2025-01-05", "sprayed the skylight rubber", {
      component: "skylight",
      action: "lubricate",
      date: "2025-01-05",
    });
    rig.tell("2025-05-01", "sealed the skylight", {
      component: "skylight",
      action: "seal",
      date: "2025-05-01",
    });
    rig.tell("2025-06-01", "skylight still dry", {
      kind: "check",
      component: "skylight",
      outcome: "holding",
      date: "2025-06-01",
    });
    const { lives } = rig.ask({ ask: "longest", topic: topic("skylight"), order: "longest" });
    expect(lives.map(({ record }) => record.fields.action)).toEqual(["seal", "lubricate"]);
  });
});

describe("use", () => {
  it("adds up by unit", () => {
    const rig = new Rig();
    rig.use("2025-05-01", 140, "miles");
    rig.use("2025-06-01", 60, "miles");
    rig.use("2025-06-02", 3, "nights");
    expect(rig.ask({ ask: "use", unit: "miles", meter: false, period: YEAR_2025 }).count).toBe(200);
    expect(rig.ask({ ask: "use", unit: null, meter: false, period: null }).use).toHaveLength(2);
  });
});

describe("an empty memory", () => {
  const queries: Query[] = [
    last(topic("roof")),
    { ask: "list", topic: EMPTY_TOPIC, period: null },
    { ask: "ever", topic: topic("roof"), period: null },
    { ask: "count", of: "failures", topic: topic("roof"), period: null },
    { ask: "holding", topic: topic("roof"), order: "newest" },
    { ask: "open", topic: EMPTY_TOPIC, period: null },
    { ask: "buy", topic: EMPTY_TOPIC },
    { ask: "cost", topic: EMPTY_TOPIC, period: null, of: "all" },
    { ask: "longest", topic: topic("roof"), order: "longest" },
    { ask: "said", topic: topic("roof"), period: null },
    { ask: "use", unit: null, meter: false, period: null },
    { ask: "due", topic: EMPTY_TOPIC, period: null },
    { ask: "worst", topic: EMPTY_TOPIC, period: null },
  ];
  it.each(queries)("answers $ask calmly", (query) => {
    expect(new Rig().ask(query).records).toEqual([]);
  });
});
