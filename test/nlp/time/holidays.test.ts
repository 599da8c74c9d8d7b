import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { easterSunday } from "../../../nlp/time/holidays.ts";
import { findTimes } from "../../../nlp/time/index.ts";

/** Paschal full moons by golden number for 1900 to 2199: Book of Common Prayer, table to find Easter Day; from memory. */
const FULL_MOONS =
  "04-14 04-03 03-23 04-11 03-31 04-18 04-08 03-28 04-16 04-05 03-25 04-13 04-02 03-22 04-10 03-30 04-17 04-07 03-27".split(
    " ",
  );
/** The Sunday after the full moon. */
const easterByTable = (year: number): string => {
  const moon = Temporal.PlainDate.from(`${year}-${FULL_MOONS[year % 19] ?? ""}`);
  return moon.add({ days: 7 - (moon.dayOfWeek % 7) }).toString();
};

describe("Easter", () => {
  it("agrees with the church's table for three centuries", () => {
    const years = Array.from({ length: 300 }, (_, i) => 1900 + i);
    expect(years.filter((year) => easterSunday(year).toString() !== easterByTable(year))).toEqual([]);
  });
});

/** Dates of 2026 as the governments publish them; from memory of those calendars. */
const OF_2026: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "America/Chicago": {
    "mlk day": "2026-01-19",
    "presidents day": "2026-02-16",
    "memorial day": "2026-05-25",
    juneteenth: "2026-06-19",
    "labor day": "2026-09-07",
    "columbus day": "2026-10-12",
    "veterans day": "2026-11-11",
    thanksgiving: "2026-11-26",
    christmas: "2026-12-25",
  },
  "America/Toronto": {
    "family day": "2026-02-16",
    "good friday": "2026-04-03",
    "victoria day": "2026-05-18",
    "canada day": "2026-07-01",
    "labour day": "2026-09-07",
    thanksgiving: "2026-10-12",
    "remembrance day": "2026-11-11",
  },
  "Europe/London": {
    "mothering sunday": "2026-03-15",
    "easter monday": "2026-04-06",
    "early may bank holiday": "2026-05-04",
    "spring bank holiday": "2026-05-25",
    "august bank holiday": "2026-08-31",
    "boxing day": "2026-12-26",
  },
  "Australia/Melbourne": {
    "labour day": "2026-03-09",
    "anzac day": "2026-04-25",
    "king's birthday": "2026-06-08",
    "melbourne cup day": "2026-11-03",
  },
  "Pacific/Auckland": {
    "waitangi day": "2026-02-06",
    "king's birthday": "2026-06-01",
    "labour day": "2026-10-26",
  },
};

describe.each(Object.entries(OF_2026))("holidays of 2026 in %s", (zone, days) => {
  it.each(Object.entries(days))("%s", (name, date) => {
    const moment = { said: "2026-12-31T12:00:00Z", zone, hemisphere: "north" } as const;
    expect(findTimes(name, moment).map(({ edtf }) => edtf)).toEqual([`${date}~`]);
  });
});
