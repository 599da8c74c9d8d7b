import { describe, expect, it } from "vitest";
import { toldOnce } from "../../../nlp/read/told-once.ts";
import type { Draft } from "../../../shared/reading.ts";
import { draft } from "../../shared/memory/rig.ts";

const tire = (more: Partial<Draft["fields"]> = {}): Draft =>
  draft({ component: "tire", action: "replace", date: "2025-05-01", ...more }, 10);

describe("what a note tells twice", () => {
  it("is one record where the second telling adds nothing", () => {
    expect(toldOnce([tire({ cost: 122 }), tire()], "")).toHaveLength(1);
  });
  it.each([{ where: "left" }, { cost: 80 }, { date: "2025-06-01" }, { materials: ["valve"] }])(
    "is two where it tells something else: %j",
    (more) => {
      const first = tire({ cost: 122, materials: ["tube"] });
      expect(toldOnce([first, tire(more)], "")).toHaveLength(2);
    },
  );
});

describe("what is meant to be done to one thing", () => {
  const todo = (more: Partial<Draft["fields"]> = {}): Draft =>
    draft(
      { kind: "todo", component: "gas-alarm", action: "replace", date: null, outcome: null, ...more },
      10,
    );

  it("is one intention, with all that is said of it", () => {
    const both = toldOnce([todo({ fault: "none there" }), todo({ due: "before winter", cost: 40 })], "");
    expect(both.map(({ fields }) => fields)).toEqual([
      todo({ fault: "none there", due: "before winter", cost: 40 }).fields,
    ]);
  });
  it("is the work where the other telling is only to look after it", () => {
    const both = toldOnce([todo({ action: "inspect" }), todo()], "");
    expect(both.map(({ fields }) => fields.action)).toEqual(["replace"]);
  });
  it.each([
    { where: "rear", action: "replace" },
    { action: "clean" },
    { component: "co-alarm" },
    { due: "2025-09" },
  ] as const)("is two where it is another's: %j", (more) => {
    expect(toldOnce([todo({ where: "front", due: "2025-07" }), todo(more)], "")).toHaveLength(2);
  });
});

describe("work of one day on one thing", () => {
  const both = (more: Partial<Draft["fields"]>) => toldOnce([tire({ materials: ["valve"] }), tire(more)], "");

  it("is one where nothing differs, with the sum and the verdict that either tells", () => {
    expect(both({ cost: 90, outcome: "holding" }).map(({ fields }) => fields)).toEqual([
      tire({ materials: ["valve"], cost: 90, outcome: "holding" }).fields,
    ]);
  });
  it.each<Partial<Draft["fields"]>>([
    { where: "the other side" },
    { date: "2025-06-01" },
    { materials: ["tube"] },
    { action: "patch" },
    { kind: "todo" },
  ])("is two where something does: %j", (more) => {
    expect(both(more)).toHaveLength(2);
  });
});

describe("two things of one sort", () => {
  const text = "new led in the porch light and the scare light";
  const light = (name: string): Draft => {
    const start = text.indexOf(name);
    const named = draft({ component: "exterior-light", action: "replace", date: "2025-05-01" }, 10);
    const span = { start, end: start + name.length };
    return { ...named, evidence: { component: { spans: [span], sure: 0.9, rule: "named" } } };
  };

  it("are two where each has its name and tells something else", () => {
    const porch = light("porch light");
    const scare = light("scare light");
    const dearer: Draft = { ...scare, fields: { ...scare.fields, cost: 12 } };
    expect(toldOnce([porch, dearer], text)).toHaveLength(2);
    expect(toldOnce([porch, { ...dearer, evidence: porch.evidence }], text)).toHaveLength(1);
  });
});

describe("what is flushed and rinsed", () => {
  const rinsed = (component: "water-heater" | "window") =>
    toldOnce(
      [
        draft({ component, action: "clean", date: "2025-05-01" }, 10),
        draft({ component, action: "flush", date: "2025-05-01" }, 40),
      ],
      "",
    ).map(({ fields }) => fields.action);

  it("is flushed once", () => {
    expect(rinsed("water-heater")).toEqual(["flush"]);
  });
  it("is two pieces of work on what holds no water", () => {
    expect(rinsed("window")).toEqual(["clean", "flush"]);
  });
});
