import { describe, expect, it } from "vitest";
import { Rig } from "./rig.ts";

describe("work told again", () => {
  const patched = () => {
    const rig = new Rig();
    rig.tell("2025-09-14", "patched the corner of the gray tank with epoxy and cloth", {
      component: "gray-tank",
      where: "corner",
      action: "patch",
      materials: ["epoxy", "glass cloth"],
      date: "2025-09-14",
    });
    return rig;
  };

  it("is a verdict on the record that exists, not a second repair", () => {
    const rig = patched();
    const ids = rig.tell("2026-05-14", "the epoxy i put on the gray tank in september is still dry", {
      component: "gray-tank",
      action: "patch",
      materials: ["epoxy"],
      date: "2025-09",
      outcome: "holding",
    });
    expect(ids).toEqual([1]);
    expect(rig.live()).toHaveLength(1);
    expect(rig.get(1).fields.outcome).toBe("holding");
    expect(rig.get(1).verdicts).toMatchObject([{ outcome: "holding", when: "2026-05-14" }]);
  });

  it("is the work on record that let go, when only its stuff is named and not what was done with it", () => {
    const rig = new Rig();
    rig.tell("2024-06-24", "smeared roof cement on the seam over the bunk", {
      component: "roof-seam",
      where: "over the bunk",
      action: "seal",
      materials: ["roof cement"],
      date: "2024-06-24",
    });
    const ids = rig.tell("2024-08-05", "cement on that roof seam cracked in the heat", {
      component: "roof-seam",
      action: "patch",
      materials: ["cement"],
      date: null,
      outcome: "failed",
    });
    expect(ids).toEqual([1]);
    expect(rig.live()).toHaveLength(1);
    expect(rig.get(1).fields).toMatchObject({ action: "seal", outcome: "failed" });
  });

  it("is the latest of several with such stuff, as one that let go before can't do so again", () => {
    const rig = new Rig();
    const taped = (date: string, materials: string[]) =>
      rig.tell(date, "taped the vent", { component: "roof-vent", action: "seal", materials, date });
    taped("2024-04-01", ["butyl tape"]);
    rig.tell("2024-05-01", "the butyl tape on the vent let go", {
      component: "roof-vent",
      action: "patch",
      materials: ["butyl tape"],
      date: null,
      outcome: "failed",
    });
    taped("2024-05-02", ["seam tape"]);
    const ids = rig.tell("2024-07-01", "the tape on the vent let go", {
      component: "roof-vent",
      action: "patch",
      materials: ["tape"],
      date: null,
      outcome: "failed",
    });
    expect(ids).toEqual([2]);
    expect(rig.live()).toHaveLength(2);
  });

  it("fills in what was not told before, and sharpens a vague date", () => {
    const rig = new Rig();
    rig.tell("2024-05-04", "dealer changed the regulator last month", {
      component: "gas-regulator",
      action: "replace",
      date: "2024-04",
    });
    rig.tell("2024-05-20", "found the slip, the regulator was changed on 12 april, 55 pounds", {
      component: "gas-regulator",
      action: "replace",
      date: "2024-04-12",
      cost: 55,
    });
    expect(rig.live()).toHaveLength(1);
    expect(rig.get(1).fields).toMatchObject({ date: "2024-04-12", cost: 55 });
  });

  it("takes the sum that is told later", () => {
    const rig = new Rig();
    const bill = (cost: number) => ({
      component: "microwave" as const,
      action: "replace" as const,
      date: "2023-09-30",
      cost,
    });
    rig.tell("2023-09-30", "new microwave in today, 110 dollars", bill(110));
    expect(rig.tell("2023-10-28", "the microwave i put in on sep 30 was 129 with taxes", bill(129))).toEqual([
      1,
    ]);
    expect(rig.get(1).fields.cost).toBe(129);
  });

  it("changes nothing when the very same note comes twice", () => {
    const rig = patched();
    const again = rig.plan("2025-09-14", "patched the corner of the gray tank with epoxy and cloth", {
      component: "gray-tank",
      where: "corner",
      action: "patch",
      materials: ["epoxy", "glass cloth"],
      date: "2025-09-14",
    });
    expect(again).toMatchObject([{ step: "same", record: 1, fill: {} }]);
  });

  it("is new work when it was done on another day", () => {
    const rig = patched();
    const plan = rig.plan("2026-03-01", "put another layer of epoxy on the gray tank corner", {
      component: "gray-tank",
      where: "corner",
      action: "patch",
      materials: ["epoxy"],
      date: "2026-03-01",
    });
    expect(plan).toMatchObject([{ step: "keep", line: { id: 1 }, supersedes: { record: 1 } }]);
  });

  it("is new work on the other side", () => {
    const rig = new Rig();
    rig.tell("2025-04-02", "greased the street side bearing", {
      component: "wheel-bearing",
      where: "street side",
      action: "lubricate",
      date: "2025-04-02",
    });
    rig.tell("2025-04-02", "greased the curb side one too", {
      component: "wheel-bearing",
      where: "curb side",
      action: "lubricate",
      date: "2025-04-02",
    });
    expect(rig.live()).toHaveLength(2);
    expect(rig.get(1).closedBy).toBeNull();
  });
});

describe("two pieces of one thing", () => {
  const slides = () => {
    const rig = new Rig();
    rig.tell("2025-03-01", "new seal on the front slide", {
      component: "slide-seal",
      where: "front slide",
      action: "replace",
      date: "2025-03-01",
    });
    rig.tell("2025-03-02", "glued the seal on the rear slide", {
      component: "slide-seal",
      where: "rear slide",
      action: "refasten",
      materials: ["glue"],
      date: "2025-03-02",
    });
    return rig;
  };

  it("stay two", () => {
    const rig = slides();
    rig.tell("2025-06-01", "rear slide seal is still tight", {
      kind: "check",
      component: "slide-seal",
      where: "rear",
      outcome: "holding",
      date: "2025-06-01",
    });
    expect(rig.all([1, 2]).map((record) => record.fields.outcome)).toEqual(["untested", "holding"]);
  });

  it("are asked about once when the words fit both, and the note is kept meanwhile", () => {
    const plan = slides().plan("2025-06-01", "the slide seal is leaking", {
      kind: "check",
      component: "slide-seal",
      outcome: "failed",
      date: "2025-06-01",
    });
    expect(plan).toMatchObject([{ step: "ask", candidates: [2, 1], otherwise: { step: "keep" } }]);
    expect(plan[0]?.step === "ask" && plan[0].picked).toMatchObject([
      { step: "verdict", record: 2 },
      { step: "verdict", record: 1 },
    ]);
  });
});

describe("looks", () => {
  it("at a thing that was never worked on stand by themselves", () => {
    const plan = new Rig().plan("2025-05-01", "looked over the hitch, no cracks", {
      kind: "check",
      component: "hitch",
      outcome: "holding",
      date: "2025-05-01",
      looked: true,
    });
    expect(plan).toMatchObject([{ step: "keep", verdicts: [] }]);
  });

  it("made on purpose are kept and are a word on the fix as well", () => {
    const rig = new Rig();
    rig.tell("2025-04-01", "welded the tongue", { component: "frame", action: "weld", date: "2025-04-01" });
    rig.tell("2025-06-01", "crawled under and checked the weld on the frame, sound", {
      kind: "check",
      component: "frame",
      outcome: "holding",
      date: "2025-06-01",
      looked: true,
    });
    expect(rig.live()).toHaveLength(2);
    expect(rig.get(1).fields.outcome).toBe("holding");
  });
});
