import { describe, expect, it } from "vitest";
import { Rig } from "./rig.ts";

const steps = (plan: readonly { readonly step: string }[]): string => plan.map(({ step }) => step).join();

describe("what is still to do", () => {
  const listed = () => {
    const rig = new Rig();
    rig.tell("2025-07-11", "spare tire is shot, must buy a new one", {
      kind: "todo",
      component: "tire",
      where: "spare",
      action: "replace",
      fault: "shot",
    });
    rig.tell("2025-07-12", "stove igniter is dead", {
      kind: "fault",
      component: "stove",
      fault: "igniter dead",
      date: "2025-07-12",
    });
    return rig;
  };
  const open = (rig: Rig) =>
    rig.keeper.history.records({ open: true }).map((record) => record.fields.component);

  it("is ticked off by the work", () => {
    const rig = listed();
    rig.tell("2025-08-02", "put the new spare on today", {
      component: "tire",
      action: "replace",
      date: "2025-08-02",
    });
    expect(open(rig)).toEqual(["stove"]);
    expect(rig.get(1).closedBy).toBe(3);
  });

  it("is not ticked off by work on another part", () => {
    const rig = listed();
    rig.tell("2025-08-02", "cleaned the oven burner jets with a brush", {
      component: "stove",
      action: "clean",
      materials: ["brush"],
      date: "2025-08-02",
    });
    expect(open(rig)).toContain("stove");
  });

  it("is ticked off when it works again by itself", () => {
    const rig = listed();
    rig.tell("2025-08-02", "stove igniter works again", {
      kind: "check",
      component: "stove",
      outcome: "holding",
      date: "2025-08-02",
    });
    expect(open(rig)).toEqual(["tire"]);
  });

  it("is kept once however often it is told", () => {
    const rig = listed();
    expect(
      steps(
        rig.plan("2025-07-20", "still need that spare tire", {
          kind: "todo",
          component: "tire",
          action: "replace",
        }),
      ),
    ).toBe("same");
    expect(
      steps(
        rig.plan("2025-07-20", "igniter on the stove is still dead", {
          kind: "fault",
          component: "stove",
          fault: "igniter dead",
        }),
      ),
    ).toBe("same");
  });

  it("takes over from the fault that it means to cure", () => {
    const rig = listed();
    rig.tell("2025-07-14", "gonna order a new stove igniter", {
      kind: "todo",
      component: "stove",
      action: "replace",
      materials: ["igniter"],
    });
    expect(open(rig).filter((component) => component === "stove")).toHaveLength(1);
  });
});
