import { describe, expect, it } from "vitest";
import { changedDate } from "../../../shared/memory/amend-date.ts";

describe("a date counted from the one on record", () => {
  it.each([
    [{ season: 22, side: "before" }, "2024-22", "north", "2023-22"],
    [{ season: 23, side: "before" }, "2025-03-08", "north", "2024-23"],
    [{ season: 23, side: "after" }, "2025-03-08", "north", "2025-23"],
    [{ season: 22, side: "before" }, "2025-03-08", "south", "2024-22"],
    [{ season: 22, side: "before" }, "2025-01-08", "south", "2023-22"],
  ] as const)("%o of %s in the %s: %s", (change, kept, hemisphere, date) => {
    expect(changedDate(change, kept, hemisphere)).toBe(date);
  });

  it("stays a season a year earlier", () => {
    expect(changedDate({ shift: { months: -12 } }, "2024-22", "north")).toBe("2023-22");
  });

  it("is nothing where no date is on record", () => {
    expect(changedDate({ season: 22, side: "before" }, null, "north")).toBeNull();
  });
});
