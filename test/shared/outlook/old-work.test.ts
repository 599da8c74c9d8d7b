import { describe, expect, it } from "vitest";
import { outlooksOf } from "../../../shared/outlook/index.ts";
import { daysOn, kept, outlookOn, rigOn, seam } from "./records.ts";

const told = (outcome: "holding" | "untested") => seam("2026-06-01", { date: "2022", outcome });

describe("old work told of later", () => {
  it("is given a sensible day ahead, not one in the past", () => {
    for (const date of ["2019", "2022-22", "2024-11", null]) {
      const record = seam("2026-06-01", { date, outcome: "holding" });
      const { nextLook } = outlookOn(rigOn("2026-06-01"), record);
      expect(daysOn("2026-06-01", nextLook.day)).toBeGreaterThan(20);
    }
  });

  it("does not flood: a history told in one evening is looked at over months", () => {
    const works = [
      "frame",
      "gray-tank",
      "window",
      "cabinet",
      "faucet",
      "wiring",
      "slide-seal",
      "entry-step",
    ] as const;
    const records = works.flatMap((component) =>
      ["2020", "2022", "2023-24", "2024-06"].map((date) =>
        kept("2026-06-01", { component, action: "repair", date, outcome: "holding" }),
      ),
    );
    const looks = outlooksOf({ ...rigOn("2026-06-01"), records }).map(({ nextLook }) =>
      daysOn("2026-06-01", nextLook.day),
    );
    expect(looks).toHaveLength(records.length);
    expect(looks.filter((days) => days < 14)).toHaveLength(0);
    expect(looks.filter((days) => days < 45).length).toBeLessThan(records.length / 3);
  });

  it("is looked at sooner when nothing was said of how it held, but spread out", () => {
    const rig = rigOn("2026-06-01");
    const days = Array.from({ length: 20 }, () =>
      daysOn("2026-06-01", outlookOn(rig, told("untested")).nextLook.day),
    );
    expect(Math.max(...days)).toBeLessThan(
      daysOn("2026-06-01", outlookOn(rig, told("holding")).nextLook.day),
    );
    expect(Math.min(...days)).toBeGreaterThanOrEqual(7);
    expect(new Set(days).size).toBeGreaterThan(10);
  });

  it("counts silence less than a look", () => {
    const rig = rigOn("2026-06-01");
    expect(outlookOn(rig, told("untested")).goneSinceLastLook).toBeGreaterThan(0.1);
    expect(outlookOn(rig, told("holding")).goneSinceLastLook).toBeLessThan(0.02);
  });
});
