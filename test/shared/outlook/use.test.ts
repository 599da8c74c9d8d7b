import { describe, expect, it } from "vitest";
import type { KeptUsage } from "../../../shared/history.ts";
import { dayOf } from "../../../shared/outlook/days.ts";
import { useOf } from "../../../shared/outlook/index.ts";
import type { UseUnit } from "../../../shared/record.ts";
import { day, used } from "./records.ts";

const reading = (date: string, value: number, unit: UseUnit): KeptUsage => ({
  ...used(date, 0, unit),
  usage: { reading: value, unit, date },
});
const use = (usage: readonly KeptUsage[], trip: Parameters<typeof useOf>[0]["trip"] = null) =>
  useOf({ usage, trip, today: day("2026-06-01"), hemisphere: "north" });
const at = (date: string) => dayOf(day(date));

describe("use", () => {
  it("adds up what was told", () => {
    const log = [
      used("2026-05-01", 200, "miles"),
      used("2026-05-20", 100, "miles"),
      used("2026-05-20", 161, "km"),
    ];
    expect(use(log).between("miles", at("2026-05-02"), at("2026-05-21"))).toBeCloseTo(
      100 + 161 / 1.609344,
      6,
    );
    expect(use(log).between("miles", at("2026-05-01"), at("2026-05-02"))).toBeCloseTo(200, 6);
  });

  it("spreads the difference of two meter readings over the days between", () => {
    const log = [reading("2026-04-01", 84_000, "miles"), reading("2026-05-01", 84_600, "miles")];
    expect(use(log).between("miles", at("2026-04-02"), at("2026-05-02"))).toBeCloseTo(600, 6);
    expect(use(log).between("miles", at("2026-04-02"), at("2026-04-17"))).toBeCloseTo(300, 6);
  });

  it("is not misled by a meter that was changed", () => {
    const log = [reading("2026-04-01", 84_000, "miles"), reading("2026-05-01", 12, "miles")];
    expect(use(log).between("miles", at("2026-04-02"), at("2026-05-02"))).toBeGreaterThanOrEqual(0);
  });

  it("takes silence soon after a told amount for standing still, and long silence for not writing", () => {
    const log = [used("2025-12-01", 500, "miles")];
    expect(use(log).between("miles", at("2025-12-02"), at("2026-01-10"))).toBe(0);
    expect(use(log).between("miles", at("2026-02-01"), at("2026-06-01"))).toBeGreaterThan(500);
  });

  it("goes at the typical pace without a log, and at the log's own with a long one", () => {
    expect(use([]).perDay("miles")).toBe(15);
    const busy = Array.from({ length: 40 }, (_, week) =>
      used(day("2025-08-20").add({ weeks: week }).toString(), 420, "miles"),
    );
    expect(use(busy).perDay("miles")).toBeGreaterThan(40);
  });

  it("forecasts an announced trip by its miles", () => {
    const trip = { from: day("2026-06-11"), to: day("2026-06-21"), miles: 2000 };
    expect(use([], trip).between("miles", at("2026-06-11"), at("2026-06-21"))).toBeCloseTo(2000, 6);
    expect(use([], trip).between("miles", at("2026-06-21"), at("2026-06-22"))).toBeCloseTo(15, 6);
  });
});
