import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";

const MOMENT = { said: "2025-08-03T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("when something is to be done", () => {
  it.each([
    ["the vent lid needs a new one before easter maybe twenty bucks", "before easter", 20],
    ["need a new sewer hose before the trip about 30 dollars", "before the trip", 30],
    ["need to reseal the roof before it rains again", "before it rains again", null],
    ["grease the bearings before the 500 mile trip", "before the 500 mile trip", null],
  ])("ends before what it is to cost: %s", (text, due, cost) => {
    expect(read(text, MOMENT).records.map(({ fields }) => [fields.due, fields.cost])).toEqual([[due, cost]]);
  });
});
