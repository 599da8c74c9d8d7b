import { describe, expect, it } from "vitest";
import { withoutTroubleFirst } from "../../../nlp/read/trouble-first.ts";
import type { Draft } from "../../../shared/reading.ts";
import { draft } from "../../shared/memory/rig.ts";

const work = (more: Partial<Draft["fields"]>, sure: number): Draft => ({
  ...draft({ component: "awning", action: "patch", date: "2025-05-10", ...more }, 10),
  evidence: { kind: { spans: [], sure, rule: "work" } },
});
const TORN = { action: "replace", date: "2025-05-09", outcome: "failed", fault: "a rip in it" } as const;

describe("trouble taken for work that gave out", () => {
  it("is the trouble of the work that it led to", () => {
    const [only, ...others] = withoutTroubleFirst([work(TORN, 0.4), work({ materials: ["tape"] }, 0.99)]);
    expect(others).toEqual([]);
    expect(only?.fields).toMatchObject({ materials: ["tape"], fault: "a rip in it" });
  });

  it.each<readonly [string, Partial<Draft["fields"]>, number]>([
    ["it surely was done", TORN, 0.95],
    ["it cost something", { ...TORN, cost: 9 }, 0.4],
    ["it was another thing", { ...TORN, component: "window" }, 0.4],
    ["it was days before", { ...TORN, date: "2025-05-02" }, 0.4],
    ["it held", { ...TORN, outcome: "holding" }, 0.4],
  ])("stays where %s", (_, fields, sure) => {
    expect(withoutTroubleFirst([work(fields, sure), work({}, 0.99)])).toHaveLength(2);
  });
});
