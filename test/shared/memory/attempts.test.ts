import { describe, expect, it } from "vitest";
import { Rig } from "./rig.ts";

describe("attempts on one trouble", () => {
  it("follow on in one line, and the earlier one is settled as failed", () => {
    const rig = new Rig();
    rig.tell("2023-09-02", "caulked the rear corner trim with silicone", {
      component: "corner-trim",
      where: "rear",
      action: "seal",
      materials: ["silicone"],
      date: "2023-09-02",
    });
    rig.tell("2023-11-11", "silicone on the corner peeled off already, redid it with butyl tape", {
      component: "corner-trim",
      action: "seal",
      materials: ["butyl tape"],
      date: "2023-11-11",
    });
    const [first, second] = rig.all([1, 2]);
    expect(first).toMatchObject({ closedBy: 2, fields: { outcome: "failed" } });
    expect(first?.verdicts).toMatchObject([{ outcome: "failed", when: "2023-11-11" }]);
    expect(second?.line).toBe(first?.line);
  });

  it.each([
    ["door lock stuck a third time, new lock in", "lock stuck a third time"],
    ["the graphite in the lock gummed up, put a new lock in", "graphite gummed up"],
  ])("show that the earlier one let go: %s", (text, fault) => {
    const rig = new Rig();
    rig.tell("2023-01-14", "door lock jammed so i puffed graphite in it", {
      component: "entry-door",
      action: "lubricate",
      materials: ["graphite"],
      date: "2023-01-14",
    });
    rig.tell("2023-03-18", text, {
      component: "entry-door",
      action: "replace",
      materials: ["lock"],
      date: "2023-03-18",
      fault,
    });
    expect(rig.get(1)).toMatchObject({ closedBy: 2, fields: { outcome: "failed" } });
  });

  it("told in one note are one line", () => {
    const rig = new Rig();
    rig.tell(
      "2024-04-20",
      "patched it with epoxy in 2023 but that wept, so in april i had it welded",
      { component: "black-tank", action: "patch", materials: ["epoxy"], date: "2023-22", outcome: "failed" },
      { component: "black-tank", action: "weld", date: "2024-04", outcome: "holding" },
    );
    const [first, second] = rig.all([1, 2]);
    expect(second?.line).toBe(first?.line);
    expect(first?.closedBy).toBe(2);
  });

  it("do not mix with the next round of the same care", () => {
    const rig = new Rig();
    rig.tell("2024-06-22", "greased the hubs", {
      component: "wheel-bearing",
      action: "lubricate",
      date: "2024-06-22",
    });
    rig.tell("2025-06-20", "greased the hubs again", {
      component: "wheel-bearing",
      action: "lubricate",
      date: "2025-06-20",
    });
    expect(rig.get(1).fields.outcome).toBe("untested");
    expect(rig.get(2).line).toBe(rig.get(1).line);
  });

  it("leave another part of the same thing alone", () => {
    const rig = new Rig();
    rig.tell("2024-02-19", "new sail switch in the furnace", {
      component: "furnace",
      action: "replace",
      materials: ["sail switch"],
      date: "2024-02-19",
    });
    rig.tell("2025-02-19", "new igniter in the furnace", {
      component: "furnace",
      action: "replace",
      materials: ["igniter"],
      date: "2025-02-19",
    });
    expect(rig.get(1)).toMatchObject({ closedBy: null, fields: { outcome: "untested" } });
    expect(rig.get(2).line).not.toBe(rig.get(1).line);
  });

  it("turn a trouble that is back into a verdict on the fix", () => {
    const rig = new Rig();
    rig.tell("2024-08-17", "soldered the wire back on the bed socket", {
      component: "outlet",
      where: "by the bed",
      action: "rewire",
      date: "2024-08-17",
    });
    rig.tell("2024-09-28", "that bed socket is dead again", {
      kind: "fault",
      component: "outlet",
      fault: "dead again",
      date: "2024-09-28",
    });
    expect(rig.get(1).fields.outcome).toBe("failed");
    expect(rig.get(2).line).toBe(rig.get(1).line);
  });

  it("hear that a fix holds in part", () => {
    const rig = new Rig();
    rig.tell("2024-08-10", "patched the belly with plastic", {
      component: "underbelly",
      action: "patch",
      materials: ["corrugated plastic"],
      date: "2024-08-10",
    });
    rig.tell("2025-09-06", "one edge of the belly patch has come loose but it mostly still covers", {
      kind: "fault",
      component: "underbelly",
      fault: "one edge loose",
      date: "2025-09-06",
    });
    expect(rig.live()).toHaveLength(1);
    expect(rig.get(1).fields.outcome).toBe("partly");
  });
});
