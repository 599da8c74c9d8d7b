import { describe, expect, it } from "vitest";
import { CARE_ROWS, CARE_SOURCES } from "../../../shared/outlook/care-table.ts";
import { DUD_FACTORS, DUD_WEIGHTS, SHAPE_WEIGHTS } from "../../../shared/outlook/grid.ts";
import { FIX_KINDS, fixKindOf } from "../../../shared/outlook/priors.ts";
import { lookForOf } from "../../../shared/outlook/signs.ts";
import wear from "../../../shared/outlook/tables/wear.json" with { type: "json" };
import { wearOf } from "../../../shared/outlook/wear.ts";
import { COMPONENTS } from "../../../shared/vocabulary.ts";
import { kept } from "./records.ts";

const kindOf = (
  action: Parameters<typeof kept>[1]["action"],
  materials: string[],
  component: (typeof COMPONENTS)[number] = "window",
) =>
  fixKindOf(kept("2026-01-01", { component, action: action ?? null, materials, fault: "leak" }).fields)?.id;

describe("tables", () => {
  it("name every component's wear exactly once", () => {
    const named = wear.groups.flatMap(({ components }) => components);
    expect(named.toSorted()).toEqual([...COMPONENTS].toSorted());
    for (const component of COMPONENTS) expect(wearOf(component).hidden).toBeGreaterThan(0);
  });

  it("have a sign to look for on every component", () => {
    for (const component of COMPONENTS)
      for (const kind of FIX_KINDS) {
        const { fields } = kept("2026-01-01", { component, action: kind.actions[0] ?? null });
        expect(lookForOf(fields, kind)).toMatch(/^[A-Z].{20,}\.$/);
      }
  });

  it.each([
    ["patch", ["repair tape"], "tape"],
    ["seal", ["butyl tape"], "butyl"],
    ["patch", ["epoxy", "glass cloth"], "glass"],
    ["patch", ["plumbers epoxy"], "putty"],
    ["seal", ["self-leveling sealant"], "self-leveling"],
    ["seal", ["silicone"], "silicone"],
    ["seal", [], "sealant"],
    ["refasten", ["construction adhesive"], "glue"],
    ["refasten", ["stainless screw"], "screwed"],
    ["replace", ["gasket"], "new-rubber"],
    ["replace", ["pex elbow"], "new-part"],
    ["clean", [], "serviced"],
    ["repair", [], "mended"],
  ] as const)("read %s with %o as %s", (action, materials, kind) => {
    expect(kindOf(action, [...materials])).toBe(kind);
  });

  it("weigh their hypotheses fairly", () => {
    const sum = (weights: readonly number[]) => weights.reduce((total, weight) => total + weight, 0);
    for (const weights of Object.values(SHAPE_WEIGHTS)) expect(sum(weights)).toBeCloseTo(1, 9);
    expect(sum(DUD_WEIGHTS)).toBeCloseTo(1, 9);
    expect(sum(DUD_WEIGHTS.map((weight, index) => weight * (DUD_FACTORS[index] ?? 0)))).toBeCloseTo(1, 1);
  });

  it("give a source, or the word that there is none, for every row of care", () => {
    for (const row of CARE_ROWS) {
      for (const key of row.sourceKeys) expect(CARE_SOURCES).toHaveProperty(key);
      expect(row.sourceStatus === "read" ? row.sourceKeys.length : 1).toBeGreaterThan(0);
      if (row.sourceStatus === "no source") expect(row.source).toContain("no source");
      expect(Object.keys(row.every).length > 0 || row.seasons !== undefined || row.beforeTrip === true).toBe(
        true,
      );
    }
    expect(new Set(CARE_ROWS.map(({ id }) => id)).size).toBe(CARE_ROWS.length);
  });
});
