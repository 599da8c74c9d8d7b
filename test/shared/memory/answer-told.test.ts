import { describe, expect, it } from "vitest";
import { EMPTY_TOPIC, type Query } from "../../../shared/memory/query.ts";
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
