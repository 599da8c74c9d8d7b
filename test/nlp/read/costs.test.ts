import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import table from "./costs.json" with { type: "json" };

const SAID = "2026-05-14T18:30:00-06:00";
const cases = table.costs.map(({ text, cost, zone = "America/Denver" }) => [text, cost, zone] as const);

describe("what work cost", () => {
  it.each(cases)("%s: %s", (text, cost, zone) => {
    const { records } = read(text, { said: SAID, zone, hemisphere: "north" });
    expect(records[0]?.fields.cost).toBe(cost);
  });
});
