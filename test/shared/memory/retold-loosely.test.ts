import { describe, expect, it } from "vitest";
import type { RecordFields } from "../../../shared/record.ts";
import { Rig } from "./rig.ts";

type Fix = Partial<RecordFields> & Pick<RecordFields, "component" | "action"> & { readonly date: string };

/** A rig with one fix on record, told on the day it was done. */
const with1 = (fix: Fix): Rig => {
  const rig = new Rig();
  rig.tell(fix.date, "did it", fix);
  return rig;
};

const SEALED = { component: "corner-trim", where: "rear", action: "seal" } as const;
const sealed = () => with1({ ...SEALED, materials: ["butyl tape"], date: "2024-10-28" });

describe("work told again with a loose time", () => {
  it("is the work on record where it only holds", () => {
    const rig = sealed();
    const again = { ...SEALED, materials: ["butyl"], date: "2024-12", outcome: "holding" } as const;
    expect(
      rig.tell("2025-01-20", "the butyl on the rear corner trim held through november and december", {
        ...again,
        materials: ["butyl"],
      }),
    ).toEqual([1]);
    expect(rig.get(1).fields).toMatchObject({ date: "2024-10-28", outcome: "holding" });
  });

  it.each([
    ["was paid for", { date: "2024-12", cost: 11 }],
    ["is told with its day", { date: "2025-01-02" }],
  ])("is work of its own where it %s", (_, more) => {
    const rig = sealed();
    rig.tell("2025-01-20", "sealed the rear corner trim with butyl tape, holding", {
      ...SEALED,
      materials: ["butyl tape"],
      outcome: "holding",
      ...more,
    });
    expect(rig.live()).toHaveLength(2);
  });
});

describe("work that let go, by another name", () => {
  const riveted = () => with1({ component: "underbelly", action: "refasten", date: "2024-10-23" });
  const shear = (rig: Rig) =>
    rig.tell("2025-12-16", "the rivets in the belly sheet have sheared", {
      component: "underbelly",
      action: "patch",
      materials: ["rivet"],
      outcome: "failed",
    });

  it("is the one fix there was", () => {
    const rig = riveted();
    expect(shear(rig)).toEqual([1]);
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
    shear(rig);
    expect(rig.live()).toHaveLength(3);
  });
});

describe("a look and an account of the work in one note", () => {
  it("are of one record", () => {
    const { component, where } = SEALED;
    const ids = sealed().tell(
      "2025-01-20",
      "the rear corner trim is dry, the butyl tape i sealed it with holds",
      { kind: "check", component, where, action: "inspect", date: "2025-01-20", outcome: "holding" },
      { ...SEALED, materials: ["butyl tape"], outcome: "holding" },
    );
    expect(new Set(ids)).toEqual(new Set([1]));
  });
});

describe("work that has held since", () => {
  const floored = () =>
    with1({ component: "floor", action: "rebuild", materials: ["plywood"], date: "2024-05-18" });
  const solid = (rig: Rig, date: string) =>
    rig.tell("2024-09-28", "the plywood pete put in the floor then feels good", {
      component: "floor",
      action: "reinforce",
      materials: ["plywood"],
      date,
      outcome: "holding",
    });

  it("is the work on record by its stuff and its time, whatever it is called", () => {
    const rig = floored();
    expect(solid(rig, "2024-05")).toEqual([1]);
    expect(rig.get(1).fields.outcome).toBe("holding");
  });

  it("is other work at another time", () => {
    const rig = floored();
    solid(rig, "2024-07");
    expect(rig.live()).toHaveLength(2);
  });
});

describe("work that let go lately", () => {
  const hinged = () =>
    with1({ component: "hatch", action: "refasten", materials: ["blind rivet"], date: "2024-06-05" });
  const gaveWay = (rig: Rig, date: string) =>
    rig.tell("2024-08-19", "the rivets in the locker lid gave way", {
      component: "hatch",
      action: "refasten",
      materials: ["rivet"],
      date,
      outcome: "failed",
    });

  it("is the work on record, told with the day on which it let go", () => {
    const rig = hinged();
    expect(gaveWay(rig, "2024-08-15")).toEqual([1]);
    expect(rig.get(1).fields).toMatchObject({ date: "2024-06-05", outcome: "failed" });
  });

  it("is other work where that was done before what is on record", () => {
    const rig = hinged();
    gaveWay(rig, "2023-04-15");
    expect(rig.live()).toHaveLength(2);
  });
});

describe("a word on how work does", () => {
  const plated = () =>
    with1({
      component: "air-conditioner",
      action: "patch",
      materials: ["aluminum plate"],
      date: "2023-08-12",
    });

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

  it("is none where the work was done over just now", () => {
    const rig = with1({ component: "blind", action: "refasten", date: "2023-08-12" });
    rig.tell("2024-04-13", "screwed the curtain track back up and its rock solid", {
      component: "blind",
      action: "refasten",
      date: "2024-04-13",
      outcome: "holding",
    });
    expect(rig.live()).toHaveLength(2);
  });
});
