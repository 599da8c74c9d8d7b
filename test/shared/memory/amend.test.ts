import { describe, expect, it } from "vitest";
import { greased, Rig, topic } from "./rig.ts";

const fieldsOf = (rig: Rig, id = 1) => rig.get(id).fields;

describe("putting a field right", () => {
  it.each([
    ["a day on the calendar", { on: "2024-06-15" }, "2024-06-15"],
    ["the same weekday before", { weekday: 6, side: "before" }, "2024-06-22"],
    ["the Sunday after", { weekday: 7, side: "after" }, "2024-06-30"],
    ["a week earlier", { shift: { days: -7 } }, "2024-06-22"],
    ["a month earlier", { shift: { months: -1 } }, "2024-05-29"],
    ["another day of that month", { dayOfMonth: 8 }, "2024-06-08"],
  ] as const)("moves the date: %s", (_, to, date) => {
    const rig = greased();
    expect(rig.correct("2024-07-03", { change: "date", to }).is).toBe("amend");
    expect(fieldsOf(rig).date).toBe(date);
  });

  it("takes a day of the month that is still to come for that of the month before", () => {
    const rig = new Rig();
    rig.tell("2024-07-03", "greased the hubs", {
      component: "wheel-bearing",
      action: "lubricate",
      date: "2024-07-03",
    });
    rig.correct("2024-07-03", { change: "date", to: { dayOfMonth: 28 } });
    expect(fieldsOf(rig).date).toBe("2024-06-28");
  });

  it("keeps a vague date vague when it is moved", () => {
    const rig = new Rig();
    rig.tell("2024-07-03", "did the roof in 2021", { component: "roof", action: "seal", date: "2021" });
    rig.correct("2024-07-03", { change: "date", to: { shift: { months: -12 } } });
    expect(fieldsOf(rig).date).toBe("2020");
  });

  it("moves a day gone by of the work, and leaves what is due", () => {
    const rig = new Rig();
    rig.tell(
      "2024-07-03",
      "brakes adjusted monday, new tires before the trip",
      { component: "brake", action: "adjust", date: "2024-07-01" },
      { kind: "todo", component: "tire", action: "replace", due: "before the trip" },
    );
    rig.correct("2024-07-03", { change: "date", to: { on: "2024-06-30" } });
    expect([fieldsOf(rig).date, fieldsOf(rig, 2).due]).toEqual(["2024-06-30", "before the trip"]);
  });

  it("moves what a todo is due, not when it was done", () => {
    const rig = new Rig();
    rig.tell("2024-07-03", "must do the hubs on the 10th", {
      kind: "todo",
      component: "wheel-bearing",
      action: "lubricate",
      due: "2024-07-10",
    });
    rig.correct("2024-07-03", { change: "date", to: { on: "2024-07-20" } });
    expect(fieldsOf(rig)).toMatchObject({ due: "2024-07-20", date: null });
  });

  it("swaps one stuff for another and leaves the rest", () => {
    const rig = new Rig();
    rig.tell("2025-03-08", "patched the tank", {
      component: "gray-tank",
      action: "patch",
      materials: ["epoxy", "glass cloth"],
      date: "2025-03-08",
    });
    rig.correct("2025-03-08", {
      change: "materials",
      drop: ["epoxy"],
      add: ["polyester resin"],
      how: "instead",
    });
    expect(fieldsOf(rig).materials).toEqual(["glass cloth", "polyester resin"]);
    rig.correct("2025-03-08", { change: "materials", drop: [], add: ["primer"], how: "also" });
    expect(fieldsOf(rig).materials).toEqual(["glass cloth", "polyester resin", "primer"]);
  });

  it.each([
    ["another kind of one of them", ["strap", "stainless bolt"], [], ["zinc bolt"], ["strap", "zinc bolt"]],
    ["something else for all", ["wood screw", "wood glue"], [], ["epoxy"], ["epoxy"]],
    [
      "something for the one denied",
      ["wood screw", "wood glue"],
      ["wood glue"],
      ["epoxy"],
      ["wood screw", "epoxy"],
    ],
    [
      "something for both that are denied",
      ["stainless bolt", "butyl tape"],
      ["stainless", "tape"],
      ["screw"],
      ["screw"],
    ],
  ])("takes %s", (_, materials, drop, add, left) => {
    const rig = new Rig();
    rig.tell("2025-03-08", "bolted it up", {
      component: "fresh-tank",
      action: "refasten",
      materials,
      date: "2025-03-08",
    });
    rig.correct("2025-03-08", { change: "materials", drop, add, how: "instead" });
    expect(fieldsOf(rig).materials).toEqual(left);
  });

  it("finds the field that unknown words belong to", () => {
    const rig = new Rig();
    rig.tell("2024-08-03", "resealed the back hatch with bulb rubber", {
      component: "hatch",
      where: "back",
      action: "seal",
      materials: ["bulb rubber"],
      date: "2024-08-03",
    });
    rig.correct("2024-08-03", { change: "phrase", to: "pinchweld rubber", instead: "bulb rubber" });
    expect(fieldsOf(rig).materials).toEqual(["pinchweld rubber"]);
    rig.correct("2024-08-03", { change: "phrase", to: "street side", instead: "back" });
    expect(fieldsOf(rig).where).toBe("street side");
  });

  it("says from what to what", () => {
    expect(
      greased().amendment("2024-07-03", { change: "fields", to: { component: "brake", cost: 20 } }),
    ).toEqual({
      is: "amend",
      changes: [
        { do: "set", record: 1, field: "component", from: "wheel-bearing", to: "brake" },
        { do: "set", record: 1, field: "cost", from: 12, to: 20 },
      ],
    });
  });

  it("gives the work to somebody else", () => {
    const rig = greased();
    rig.correct("2024-07-03", { change: "done-by", to: "the shop" });
    expect(rig.get(1).doneBy).toBe("the shop");
  });
});

describe("finding the record", () => {
  const several = () => {
    const rig = new Rig();
    rig.tell(
      "2025-05-01",
      "three things today",
      { component: "black-tank", action: "patch", date: "2025-05-01", cost: 10 },
      { component: "toilet", action: "replace", date: "2025-05-01", cost: 20 },
      { component: "faucet", action: "tighten", date: "2025-05-01" },
    );
    return rig;
  };

  it("goes by its number", () => {
    const rig = several();
    rig.correct(
      "2025-05-01",
      { change: "done-by", to: "the dealer" },
      { target: { by: "number", numbers: [2] } },
    );
    expect(rig.all([1, 2, 3]).map((record) => record.doneBy)).toEqual([null, "the dealer", null]);
  });

  it("goes by what it was not", () => {
    const rig = several();
    rig.correct(
      "2025-05-01",
      { change: "fields", to: { component: "gray-tank" } },
      { not: { component: "black-tank" } },
    );
    expect(fieldsOf(rig, 1).component).toBe("gray-tank");
  });

  it("goes by the nearest of kin of the new name", () => {
    const rig = several();
    rig.correct("2025-05-01", { change: "fields", to: { component: "gray-tank" } });
    expect(rig.all([1, 2, 3]).map((record) => record.fields.component)).toEqual([
      "gray-tank",
      "toilet",
      "faucet",
    ]);
  });

  it("reaches an older one by what it is about", () => {
    const rig = greased();
    rig.tell("2025-05-01", "new faucet", { component: "faucet", action: "replace", date: "2025-05-01" });
    rig.correct(
      "2025-05-02",
      { change: "fields", to: { cost: 15 } },
      { target: { by: "topic", topic: topic("wheel-bearing") } },
    );
    expect(fieldsOf(rig, 1).cost).toBe(15);
    expect(fieldsOf(rig, 2).cost).toBeNull();
  });

  it("leaves alone the older record that the note only judged", () => {
    const rig = greased();
    rig.tell("2024-09-01", "hub let go again, new bearing, 60", {
      component: "wheel-bearing",
      action: "replace",
      fault: "let go again",
      date: "2024-09-01",
      cost: 60,
    });
    rig.correct("2024-09-01", { change: "fields", to: { cost: 66 } });
    expect(rig.all([1, 2]).map((record) => record.fields.cost)).toEqual([12, 66]);
  });
});

describe("numbers", () => {
  it("change nothing where the money told is on record already", () => {
    const rig = greased();
    expect(rig.correct("2024-07-03", { change: "number", to: 12, unit: null, instead: null })).toEqual({
      is: "impossible",
      why: "already-so",
    });
  });

  it("correct the use just told", () => {
    const rig = new Rig();
    rig.use("2025-06-01", 112, "miles");
    rig.correct("2025-06-01", { change: "number", to: 121, unit: null, instead: null });
    expect(rig.keeper.history.usage().map(({ usage }) => usage)).toEqual([
      { count: 121, unit: "miles", date: "2025-06-01" },
    ]);
  });
  it("correct its unit alone", () => {
    const rig = new Rig();
    rig.use("2025-06-01", 112, "miles");
    rig.correct("2025-06-01", { change: "number", to: null, unit: "km", instead: null });
    expect(rig.keeper.history.usage()[0]?.usage).toMatchObject({ count: 112, unit: "km" });
  });
  it("correct the money when money was told", () => {
    const rig = greased();
    rig.correct("2024-07-03", { change: "number", to: 21, unit: null, instead: 12 });
    expect(fieldsOf(rig).cost).toBe(21);
  });
});
