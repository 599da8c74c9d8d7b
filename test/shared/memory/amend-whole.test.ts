import { describe, expect, it } from "vitest";
import { EMPTY_TOPIC } from "../../../shared/memory/query.ts";
import { greased, Rig, topic } from "./rig.ts";

const fieldsOf = (rig: Rig, id = 1) => rig.get(id).fields;

describe("taking away, parting and joining", () => {
  it("takes the last one away, and what it had ticked off is open again", () => {
    const rig = new Rig();
    rig.tell("2025-07-11", "must buy a spare", { kind: "todo", component: "tire", action: "replace" });
    rig.tell("2025-08-02", "put the new spare on", {
      component: "tire",
      action: "replace",
      date: "2025-08-02",
    });
    rig.correct("2025-08-02", { change: "remove" });
    expect(rig.get(2).removed).toBe(true);
    expect(rig.keeper.history.records({ open: true }).map(({ id }) => id)).toEqual([1]);
  });

  it("takes use away too", () => {
    const rig = new Rig();
    rig.use("2025-06-01", 112, "miles");
    rig.correct("2025-06-01", { change: "remove" });
    expect(rig.keeper.history.usage()).toEqual([]);
  });

  it("parts what was taken for the same thing", () => {
    const rig = greased();
    rig.tell("2024-08-01", "greased the hubs in june with marine grease", {
      component: "wheel-bearing",
      action: "lubricate",
      materials: ["marine grease"],
      date: "2024-06",
      outcome: "holding",
    });
    expect(rig.live()).toHaveLength(1);
    rig.correct("2024-08-01", { change: "part" });
    expect(rig.live()).toHaveLength(2);
    expect(rig.get(1).fields.outcome).toBe("untested");
  });

  it("joins a thing told twice to the one most like it", () => {
    const rig = new Rig();
    rig.tell("2025-02-16", "sealed the bed window with silicone", {
      component: "window",
      action: "seal",
      materials: ["silicone"],
      date: "2025-02-16",
    });
    rig.tell("2025-03-02", "window weeping again, butyl tape this time", {
      component: "window",
      action: "seal",
      materials: ["butyl tape"],
      date: "2025-03-02",
    });
    rig.tell("2025-03-08", "i put butyl tape round the window", {
      component: "window",
      action: "patch",
      materials: ["butyl tape"],
      date: "2025-03-08",
    });
    rig.correct("2025-03-08", { change: "join" });
    expect(rig.get(3).removed).toBe(true);
    expect(rig.get(2).removed).toBe(false);
    expect(rig.get(2).closedBy).toBeNull();
  });
});

describe("what can't be put right", () => {
  it.each([
    [
      "nothing was said yet",
      "nothing-said-yet",
      () => new Rig().amendment("2025-01-01", { change: "remove" }),
    ],
    [
      "no such number",
      "no-such-number",
      () =>
        greased().amendment("2024-07-03", { change: "remove" }, { target: { by: "number", numbers: [4] } }),
    ],
    [
      "nothing about that",
      "not-found",
      () =>
        greased().amendment(
          "2024-07-03",
          { change: "remove" },
          { target: { by: "topic", topic: topic("microwave") } },
        ),
    ],
    [
      "it is so already",
      "already-so",
      () => greased().amendment("2024-07-03", { change: "fields", to: { cost: 12 } }),
    ],
    [
      "work on a day to come",
      "in-the-future",
      () => greased().amendment("2024-07-03", { change: "date", to: { on: "2024-12-01" } }),
    ],
    [
      "two dates at once",
      "contradictory",
      () =>
        greased().amendment("2024-07-03", [
          { change: "date", to: { on: "2024-05-01" } },
          { change: "date", to: { on: "2024-05-02" } },
        ]),
    ],
    [
      "changed and taken away",
      "contradictory",
      () => greased().amendment("2024-07-03", [{ change: "fields", to: { cost: 9 } }, { change: "remove" }]),
    ],
    [
      "the same as nothing before",
      "nothing-to-join",
      () => greased().amendment("2024-07-03", { change: "join" }),
    ],
  ] as const)("%s", (_, why, amendment) => {
    expect(amendment()).toEqual({ is: "impossible", why });
  });

  it("what is gone already", () => {
    const rig = greased();
    rig.correct("2024-07-03", { change: "remove" });
    expect(rig.amendment("2024-07-03", { change: "fields", to: { cost: 9 } })).toEqual({
      is: "impossible",
      why: "already-removed",
    });
  });

  it("a place that nothing shown has", () => {
    const nowhere = { ...EMPTY_TOPIC, where: ["front"] };
    expect(
      greased().amendment("2024-07-03", { change: "remove" }, { target: { by: "topic", topic: nowhere } }).is,
    ).not.toBe("which");
  });
});

describe("undoing", () => {
  it("brings back what was, and redoing brings the change back", () => {
    const rig = greased();
    rig.correct("2024-07-03", { change: "fields", to: { cost: 99 } });
    rig.keeper.undo();
    expect(fieldsOf(rig).cost).toBe(12);
    rig.keeper.redo();
    expect(fieldsOf(rig).cost).toBe(99);
  });
});
