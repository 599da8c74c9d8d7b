import { describe, expect, it } from "vitest";
import { EMPTY_TOPIC, type Query } from "../../../shared/memory/query.ts";
import type { ComponentId } from "../../../shared/vocabulary.ts";
import { Rig, topic } from "./rig.ts";

/** An invented rig; what is right below was worked out by hand from these lines. */
const told = (): Rig => {
  const rig = new Rig();
  rig.tell("2024-04-02", "oiled the squeaky hinge over the bunk", {
    component: "cabinet",
    action: "lubricate",
    where: "bunk",
    date: "2024-04-02",
  });
  rig.tell("2024-05-06", "hatch by the hitch hung on a new strut, 30", {
    component: "hatch",
    action: "replace",
    materials: ["strut"],
    where: "front",
    date: "2024-05-06",
    cost: 30,
  });
  rig.tell("2024-09-09", "the strut snapped, so a steel prop in its place", {
    component: "hatch",
    action: "replace",
    materials: ["steel prop"],
    where: "front",
    date: "2024-09-09",
  });
  rig.tell("2024-10-01", "swept the awning with a broom", {
    component: "awning",
    action: "clean",
    date: "2024-10-01",
  });
  return rig;
};

const last = (focus: "what" | "cure"): Query => ({
  ask: "last",
  topic: { ...topic("hatch"), materials: ["strut"] },
  period: null,
  focus,
  order: "newest",
});

describe("what was told, asked in other words", () => {
  it("counts what broke as a failure of the work that put it in", () => {
    const answer = told().ask({ ask: "count", of: "failures", topic: topic("hatch"), period: null });
    expect(answer.count).toBe(1);
    expect(answer.records[0]?.fields.materials).toEqual(["strut"]);
  });

  it("tells the last attempt that has not let go when asked what cured it", () => {
    expect(told().ask(last("what")).records[0]?.fields.materials).toEqual(["strut"]);
    expect(told().ask(last("cure")).records[0]?.fields.materials).toEqual(["steel prop"]);
  });

  it("keeps to a place where only the place is named", () => {
    const query: Query = { ask: "list", topic: { ...EMPTY_TOPIC, where: ["bunk"] }, period: null };
    expect(
      told()
        .ask(query)
        .records.map(({ fields }) => fields.component),
    ).toEqual(["cabinet"]);
  });

  it("names the records of the notes in which the words were found", () => {
    const about = { ...topic("water-line"), words: ["broom"], all: ["broom"] };
    const answer = told().ask({ ask: "said", topic: about, period: null });
    expect(answer.records.map(({ fields }) => fields.component)).toEqual(["awning"]);
  });
});

const AWNING = { component: "awning", action: "patch" } as const;

/** Three patches on an awning, one fix of another thing with the same stuff, and a wheel bearing greased. */
const mended = () => {
  const rig = new Rig();
  rig.tell("2024-04-01", "taped the rip", { ...AWNING, materials: ["tape"], date: "2024-04-01" });
  rig.tell("2024-06-01", "tape let go, glued it", { ...AWNING, materials: ["glue"], date: "2024-06-01" });
  rig.tell("2024-09-01", "glue let go, sewed it", { ...AWNING, materials: ["thread"], date: "2024-09-01" });
  rig.tell("2024-09-02", "glued the knob", { component: "cabinet", materials: ["glue"], date: "2024-09-02" });
  rig.tell("2024-10-01", "greased the bearings", {
    component: "wheel-bearing",
    action: "lubricate",
    date: "2024-10-01",
  });
  return rig;
};

const lastOn = (component: ComponentId): Extract<Query, { ask: "last" }> => ({
  ask: "last",
  topic: topic(component),
  period: null,
  focus: "what",
  order: "newest",
});

describe("the closest, told as such", () => {
  it("is the work at another time", () => {
    const period = { from: "2025-01-01", to: "2026-01-01", said: "last year" };
    const answer = mended().ask({ ...lastOn("wheel-bearing"), period });
    expect(answer).toMatchObject({ because: "another-time", records: [{ id: 5 }] });
  });
  it("is the same work on kin of the thing", () => {
    const answer = mended().ask({
      ...lastOn("wheel"),
      topic: { ...topic("wheel"), actions: ["lubricate"] },
    });
    expect(answer).toMatchObject({ because: "kin", records: [{ id: 5 }] });
  });
  it("is other work on the thing itself", () => {
    const answer = mended().ask({
      ...lastOn("awning"),
      topic: { ...topic("awning"), actions: ["lubricate"] },
    });
    expect(answer.because).toBe("other-work");
    expect(answer.records[0]?.fields.component).toBe("awning");
  });
});

describe("which lasted longest, of stuff alone", () => {
  it("weighs all the ways tried on what most of it went into", () => {
    const { lives } = mended().ask(
      {
        ask: "longest",
        topic: { ...EMPTY_TOPIC, materials: ["tape", "glue"], all: ["tape", "glue"] },
        order: "longest",
      },
      "2024-12-01",
    );
    // Glue 1 June to 1 September, 92 days; thread 1 September to the day of asking, 91; tape 1 April to 1 June, 61.
    expect(lives.map(({ record }) => record.id)).toEqual([2, 3, 1]);
  });
});

describe("all work in a room", () => {
  it("is that on what stands there, though nobody said so, and none elsewhere", () => {
    const rig = new Rig();
    rig.tell("2024-05-04", "new ball seal in the toilet", { component: "toilet", action: "replace" });
    rig.tell("2024-05-05", "new tap over the bathroom sink", {
      component: "faucet",
      where: "bathroom",
      action: "replace",
    });
    rig.tell("2024-05-06", "greased the hitch", { component: "hitch", action: "lubricate" });
    const { records } = rig.ask({
      ask: "list",
      topic: { ...EMPTY_TOPIC, where: ["bathroom"] },
      period: null,
    });
    expect(records.map(({ fields }) => fields.component)).toEqual(["faucet", "toilet"]);
  });
});

describe("what was never done", () => {
  it("is no thing found wrong where that is of another thing", () => {
    const rig = new Rig();
    rig.tell("2024-05-04", "the spare tyre is bald", {
      kind: "fault",
      component: "tire",
      fault: "bald",
      date: "2024-05-04",
    });
    const ever = (component: "tire" | "wheel-bearing") =>
      rig.ask({ ask: "ever", topic: { ...topic(component), actions: ["lubricate"] }, period: null }).because;
    expect([ever("tire"), ever("wheel-bearing")]).toEqual(["only-found-wrong", "never-noted"]);
  });
});
