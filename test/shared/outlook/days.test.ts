import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { civilOf, dateOf, dayOf } from "../../../shared/outlook/days.ts";

describe("days since 1970", () => {
  it("are the calendar's, leap years and centuries included", () => {
    const epoch = new Temporal.PlainDate(1970, 1, 1);
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), (day) => {
        const date = epoch.add({ days: day });
        expect(dateOf(day).equals(date)).toBe(true);
        expect(civilOf(day)).toEqual({ year: date.year, month: date.month, date: date.day });
        expect(dayOf(date)).toBe(day);
      }),
    );
    for (const iso of ["1900-02-28", "1900-03-01", "2000-02-29", "2000-03-01", "2100-03-01", "2024-12-31"])
      expect(dateOf(dayOf(Temporal.PlainDate.from(iso))).toString()).toBe(iso);
  });
});
