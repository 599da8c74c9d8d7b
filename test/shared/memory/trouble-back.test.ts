import { describe, expect, it } from "vitest";
import { Rig, topic } from "./rig.ts";

const sealed = (day: string) => ({
  component: "roof-seam" as const,
  where: "front",
  action: "seal" as const,
  materials: ["lap sealant"],
  date: day,
});

/** A seam that was sealed on 4 May 2024. */
const kept = (): Rig => {
  const rig = new Rig();
  rig.tell("2024-05-04", "sealed the front seam with lap sealant", sealed("2024-05-04"));
  return rig;
};

describe("trouble that a fix was to cure", () => {
  it("is the end of that fix when it is told again, whatever the words", () => {
    const rig = kept();
    rig.tell("2024-09-14", "front seam dripped on my pillow so I put roof tape over it", {
      ...sealed("2024-09-14"),
      action: "patch",
      materials: ["roof tape"],
      fault: "front seam dripped on my pillow",
    });
    expect(rig.get(1).fields.outcome).toBe("failed");
    expect(rig.ask({ ask: "count", of: "failures", topic: topic("roof-seam"), period: null }).count).toBe(1);
  });

  it("is back where it is told in the words of the first time, whatever was done then", () => {
    const rig = new Rig();
    const cooler = { component: "air-conditioner" as const, materials: [] };
    rig.tell("2024-05-18", "ac was blowing warm so I cleaned the coils", {
      ...cooler,
      action: "clean",
      date: "2024-05-18",
      fault: "was blowing warm",
    });
    rig.tell("2024-06-09", "a hundred and eleven and the ac only blows warm, so I swapped the capacitor", {
      ...cooler,
      action: "replace",
      materials: ["capacitor"],
      date: "2024-06-09",
      fault: "only blows warm",
    });
    rig.tell("2024-08-02", "the ac sounds like gravel", {
      ...cooler,
      kind: "fault",
      action: null,
      outcome: null,
      date: "2024-08-02",
      fault: "sounds like gravel",
    });
    expect([1, 2].map((id) => rig.get(id).fields.outcome)).toEqual(["failed", "untested"]);
  });

  it("counts for the stuff asked about alone", () => {
    const rig = kept();
    rig.tell("2024-09-14", "front seam dripped so I bedded it in butyl tape", {
      ...sealed("2024-09-14"),
      materials: ["butyl tape"],
      fault: "front seam dripped",
    });
    const failures = (material: string) =>
      rig.ask({
        ask: "count",
        of: "failures",
        topic: { ...topic("roof-seam"), materials: [material] },
        period: null,
      }).count;
    expect([failures("lap sealant"), failures("butyl tape")]).toEqual([1, 0]);
  });

  it("leaves the fix alone where another trouble is told", () => {
    const rig = kept();
    rig.tell("2024-09-14", "the front seam looks grubby, washed it down", {
      ...sealed("2024-09-14"),
      action: "clean",
      materials: [],
      fault: "grubby",
    });
    expect(rig.get(1).fields.outcome).toBe("untested");
  });
});

describe("how long a fix lasted", () => {
  it("is the time without a word of trouble, where nobody said how it does", () => {
    const [life] = kept().ask(
      { ask: "longest", topic: topic("roof-seam"), order: "longest" },
      "2024-05-14",
    ).lives;
    expect(life).toMatchObject({ held: true, lived: { days: 10, seen: false } });
  });

  it("ends with the next such work at the same place", () => {
    const rig = kept();
    rig.tell("2024-06-03", "sealed the front seam", { ...sealed("2024-06-03"), materials: ["butyl tape"] });
    const { lives } = rig.ask({ ask: "longest", topic: topic("roof-seam"), order: "longest" }, "2024-06-05");
    expect(lives.map(({ record, lived, held }) => [record.id, lived.days, held])).toEqual([
      [1, 30, false],
      [2, 2, true],
    ]);
  });

  it.each(["the door flew open on the highway", "door keeps popping open", "that shim slid off"])(
    "is back in the words of the trade: %s",
    (trouble) => {
      const rig = new Rig();
      const door = { component: "entry-door", action: "adjust" } as const;
      rig.tell("2024-06-08", "shimmed the door's strike plate", { ...door, date: "2024-06-08" });
      rig.tell("2024-09-01", `${trouble}, so I moved the strike plate over`, { ...door, date: "2024-09-01" });
      expect(rig.get(1).fields.outcome).toBe("failed");
    },
  );
});

const glued = (): Rig => {
  const rig = new Rig();
  rig.tell("2024-05-04", "stuck the slide seal back with contact cement", {
    component: "slide-seal",
    action: "refasten",
    materials: ["contact cement"],
    date: "2024-05-04",
  });
  return rig;
};

describe("work that let go", () => {
  it.each([
    ["spoke too soon, the glue on the slide seal quit", "glue"],
    ["i gave it a pull with both hands and the contact cement is off", "contact cement"],
  ])("is the work on record, whatever else is said: %s", (text, stuff) => {
    const rig = glued();
    rig.tell("2024-06-01", text, {
      component: "slide-seal",
      action: "refasten",
      materials: [stuff],
      outcome: "failed",
    });
    expect(rig.live()).toHaveLength(1);
    expect(rig.get(1).fields.outcome).toBe("failed");
  });

  it("is other work where other stuff is named", () => {
    const rig = glued();
    rig.tell("2024-06-01", "the staples in the slide seal pulled out", {
      component: "slide-seal",
      action: "refasten",
      materials: ["staple"],
      outcome: "failed",
    });
    expect(rig.live()).toHaveLength(2);
  });
});

describe("how a thing does now", () => {
  it("is told of what took over, though the place named is that of the first fix", () => {
    const rig = kept();
    rig.tell("2024-09-14", "that seam let go again so I bedded it in butyl tape", {
      ...sealed("2024-09-14"),
      where: null,
      materials: ["butyl tape"],
      fault: "seam let go",
    });
    const front = { ...topic("roof-seam"), where: ["front"], words: ["front"] };
    expect(rig.ask({ ask: "holding", topic: front, order: "newest" })).toMatchObject({
      verdict: "yes",
      records: [{ id: 2 }],
    });
  });
});
