import { describe, expect, it } from "vitest";
import { day, kept, outlookOn, rigOn, seam, tank, verdict, withVerdicts } from "./records.ts";

describe("lasting a trip", () => {
  const record = withVerdicts(tank("2026-01-10"), verdict("holding", "2026-06-01"));

  it("is less likely the longer and farther the trip", () => {
    const weld = withVerdicts(
      kept("2026-01-10", { component: "frame", action: "weld" }),
      verdict("holding", "2026-06-01"),
    );
    const { lasts } = outlookOn(rigOn("2026-06-01"), weld);
    const trip = { from: day("2026-06-12"), to: day("2026-08-12"), miles: 1000 };
    expect(lasts({ ...trip, miles: 6000 })).toBeLessThan(lasts(trip));
    expect(lasts({ ...trip, to: day("2026-12-12") })).toBeLessThan(lasts(trip));
    expect(lasts(trip)).toBeLessThan(1);
  });

  it("is a chance", () => {
    const { lasts } = outlookOn(rigOn("2026-06-01"), record);
    const chance = lasts({ from: day("2026-06-02"), to: day("2066-06-02"), miles: 1e6 });
    expect(chance).toBeGreaterThanOrEqual(0);
    expect(chance).toBeLessThan(0.1);
  });
});

describe("explaining", () => {
  it("is one sentence with a number, and says what to look for", () => {
    const rig = rigOn("2026-06-01", [], { from: day("2026-06-12"), to: day("2026-12-20"), miles: 3000 });
    for (const record of [
      tank("2026-05-30"),
      withVerdicts(tank("2025-05-30"), verdict("holding", "2026-05-01")),
      seam("2026-05-01"),
    ]) {
      const { explain, lookFor } = outlookOn(rig, record);
      expect(explain).toMatch(/\d/);
      expect(explain.match(/[.?!](?:\s|$)/g)).toHaveLength(1);
      expect(explain.length).toBeLessThan(260);
      expect(lookFor.length).toBeGreaterThan(20);
    }
  });
});
