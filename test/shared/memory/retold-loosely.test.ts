import { describe, expect, it } from "vitest";
import { Rig } from "./rig.ts";

const SEALED = {
  component: "corner-trim",
  where: "rear",
  action: "seal",
  materials: ["butyl tape"],
  date: "2024-10-28",
} as const;

const sealed = () => {
  const rig = new Rig();
  rig.tell("2024-10-28", "sealed the rear corner trim with butyl tape", {
    ...SEALED,
    materials: ["butyl tape"],
  });
  return rig;
};

describe("work told again with a loose time", () => {
  it("is the work on record where it only holds", () => {
    const rig = sealed();
    const ids = rig.tell(
      "2025-01-20",
      "the butyl on the rear corner trim held through november and december",
      {
        ...SEALED,
        materials: ["butyl"],
        date: "2024-12",
        outcome: "holding",
      },
    );
    expect(ids).toEqual([1]);
    expect(rig.get(1).fields).toMatchObject({ date: "2024-10-28", outcome: "holding" });
  });

  it("is work of its own where it was paid for, or is told with its day", () => {
    const rig = sealed();
    const again = { ...SEALED, materials: ["butyl tape"], outcome: "holding" } as const;
    rig.tell("2025-01-20", "sealed the rear corner trim with butyl tape in december, 11 dollars, holding", {
      ...again,
      materials: [...again.materials],
      date: "2024-12",
      cost: 11,
    });
    rig.tell("2025-03-20", "sealed the rear corner trim with butyl tape on the 2nd of march, holding", {
      ...again,
      materials: [...again.materials],
      date: "2025-03-02",
    });
    expect(rig.live()).toHaveLength(3);
  });
});

describe("work that let go, by another name", () => {
  const riveted = () => {
    const rig = new Rig();
    rig.tell("2024-10-23", "riveted the belly sheet back up", {
      component: "underbelly",
      action: "refasten",
      date: "2024-10-23",
    });
    return rig;
  };
  const LET_GO = { component: "underbelly", action: "patch", date: null, outcome: "failed" } as const;

  it("is the one fix there was", () => {
    const rig = riveted();
    const ids = rig.tell("2025-12-16", "the rivets in the belly sheet have sheared", {
      ...LET_GO,
      materials: ["rivet"],
    });
    expect(ids).toEqual([1]);
    expect(rig.get(1).fields).toMatchObject({ action: "refasten", outcome: "failed" });
  });

  it("is none of them where there were two", () => {
    const rig = riveted();
    rig.tell("2024-11-20", "taped a slit in the belly sheet", {
      component: "underbelly",
      action: "patch",
      materials: ["tape"],
      date: "2024-11-20",
    });
    rig.tell("2025-12-16", "the rivets in the belly sheet have sheared", { ...LET_GO, materials: ["rivet"] });
    expect(rig.live()).toHaveLength(3);
  });
});

describe("a look and an account of the work in one note", () => {
  it("are of one record", () => {
    const rig = sealed();
    const { component, where } = SEALED;
    const ids = rig.tell(
      "2025-01-20",
      "the rear corner trim is dry, the butyl tape i sealed it with holds",
      { kind: "check", component, where, action: "inspect", date: "2025-01-20", outcome: "holding" },
      { ...SEALED, materials: ["butyl tape"], outcome: "holding" },
    );
    expect(new Set(ids)).toEqual(new Set([1]));
  });
});
