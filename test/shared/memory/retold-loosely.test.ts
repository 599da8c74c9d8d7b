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

describe("work that has held since", () => {
  const floored = () => {
    const rig = new Rig();
    rig.tell("2024-05-18", "cut out the soft floor and put in new plywood", {
      component: "floor",
      action: "rebuild",
      materials: ["plywood"],
      date: "2024-05-18",
    });
    return rig;
  };
  const solid = (date: string) => ({
    component: "floor" as const,
    action: "reinforce" as const,
    materials: ["plywood"],
    date,
    outcome: "holding" as const,
  });

  it("is the work on record by its stuff and its time, whatever it is called", () => {
    const rig = floored();
    const ids = rig.tell(
      "2024-09-28",
      "the plywood pete put in the floor in may feels good",
      solid("2024-05"),
    );
    expect(ids).toEqual([1]);
    expect(rig.get(1).fields.outcome).toBe("holding");
  });

  it("is other work at another time", () => {
    const rig = floored();
    rig.tell("2024-09-28", "the plywood pete put in the floor in july feels good", solid("2024-07"));
    expect(rig.live()).toHaveLength(2);
  });
});

describe("work that let go lately", () => {
  const hinged = () => {
    const rig = new Rig();
    rig.tell("2024-06-05", "refixed the locker lid with blind rivets", {
      component: "hatch",
      action: "refasten",
      materials: ["blind rivet"],
      date: "2024-06-05",
    });
    return rig;
  };
  const failed = (date: string) => ({
    component: "hatch" as const,
    action: "refasten" as const,
    materials: ["rivet"],
    date,
    outcome: "failed" as const,
  });

  it("is the work on record, told with the day on which it let go", () => {
    const rig = hinged();
    expect(
      rig.tell("2024-08-19", "the rivets in the locker lid gave way on thursday", failed("2024-08-15")),
    ).toEqual([1]);
    expect(rig.get(1).fields).toMatchObject({ date: "2024-06-05", outcome: "failed" });
  });

  it("is other work where that was done before what is on record", () => {
    const rig = hinged();
    rig.tell("2024-08-19", "the rivets in the locker lid from last spring gave way", failed("2023-04-15"));
    expect(rig.live()).toHaveLength(2);
  });
});

describe("a word on how work does", () => {
  const plated = () => {
    const rig = new Rig();
    rig.tell("2023-08-12", "patched the ac shroud with aluminum plate", {
      component: "air-conditioner",
      action: "patch",
      materials: ["aluminum plate"],
      date: "2023-08-12",
    });
    return rig;
  };

  it("is of the work whose stuff it names, whatever was read as stuff, said of this week", () => {
    const rig = plated();
    const ids = rig.tell("2024-04-13", "600 mi this week and the plate on the ac shroud hasn't moved", {
      component: "air-conditioner",
      action: "replace",
      materials: ["ac shroud"],
      date: "2024-04-08/2024-04-14",
      outcome: "holding",
    });
    expect(ids).toEqual([1]);
    expect(rig.get(1).fields).toMatchObject({ action: "patch", outcome: "holding" });
  });
});
