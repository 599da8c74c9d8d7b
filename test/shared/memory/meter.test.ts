import { describe, expect, it } from "vitest";
import { contradictedReading } from "../../../shared/memory/meter.ts";
import type { Moment } from "../../../shared/reading.ts";
import type { Usage } from "../../../shared/record.ts";
import { MemoryHistory } from "./memory-history.ts";

const MOMENT: Moment = { said: "2025-06-10T12:00:00Z", zone: "UTC", hemisphere: "north" };

const reading = (value: number, date: string, unit: "miles" | "km" = "miles"): Usage => ({
  reading: value,
  unit,
  date,
});

const logged = (...usage: Usage[]) => {
  const history = new MemoryHistory("north");
  for (const each of usage)
    history.addUsage(history.addNote("odometer", MOMENT.said, "owner"), MOMENT.said, each);
  return history;
};

describe("meter readings", () => {
  const history = logged(reading(84_000, "2025-05-01"), reading(84_210, "2025-06-01"));

  it("run forward", () => {
    expect(contradictedReading(reading(84_500, "2025-06-10"), history, MOMENT)).toBeUndefined();
    expect(contradictedReading(reading(84_100, "2025-05-15"), history, MOMENT)).toBeUndefined();
  });
  it("that run backwards name the one they can't stand beside", () => {
    expect(contradictedReading(reading(83_120, "2025-06-10"), history, MOMENT)?.usage).toEqual(
      reading(84_000, "2025-05-01"),
    );
    expect(contradictedReading(reading(84_300, "2025-05-15"), history, MOMENT)?.usage).toEqual(
      reading(84_210, "2025-06-01"),
    );
  });
  it("of another unit say nothing of each other", () => {
    expect(contradictedReading(reading(100, "2025-06-10", "km"), history, MOMENT)).toBeUndefined();
  });
  it("are no amounts", () => {
    expect(
      contradictedReading({ count: 10, unit: "miles", date: "2025-06-10" }, history, MOMENT),
    ).toBeUndefined();
  });
});
