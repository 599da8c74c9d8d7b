import { describe, expect, it } from "vitest";
import { shiftIn } from "../../../nlp/correct/shift.ts";
import { read } from "../../../nlp/read/index.ts";
import { thingsIn } from "../../../nlp/understand/older.ts";
import { understand } from "../../../nlp/understand/understand.ts";
import { EMPTY_SCENE, type Scene, type Shown } from "../../../shared/memory/scene.ts";
import type { Moment } from "../../../shared/reading.ts";

const momentAt = (said: string): Moment => ({ said, zone: "America/Denver", hemisphere: "north" });
const NOW = momentAt("2025-02-08T10:00:00-07:00");

const NOTES = [
  ["2024-03-09T16:00:00-07:00", "put a new lid on the bathroom vent, 34 dollars"],
  ["2024-05-11T18:00:00-06:00", "my brother welded the cracked bracket on the entry step today"],
  ["2024-08-17T12:00:00-06:00", "glued the kitchen counter edge back down with contact cement"],
  ["2024-11-02T15:00:00-06:00", "greased all four wheel bearings"],
] as const;

/** All that was told over a year, the newest first; the last of it was shown last. */
const afterYear = (): Scene => {
  const older = NOTES.flatMap(([at, words], nth): Shown[] =>
    read(words, momentAt(at)).records.map(({ fields }) => ({ id: nth + 1, fields, words })),
  ).reverse();
  const last = { at: NOTES[3][0], of: "note" as const, records: older.slice(0, 1), usage: [] };
  return { ...EMPTY_SCENE, last, shown: last, older };
};

const meant = (text: string) => understand(text, NOW, afterYear());
const onRecord = (record: number, changes: unknown[]) => ({
  is: "correct",
  correction: { target: { by: "record", record }, changes },
});

describe("what puts right something told long before", () => {
  it("is found by the thing and the price that it had", () => {
    expect(meant("that vent lid in march was 43 dollars, not 34")).toMatchObject(
      onRecord(1, [{ change: "fields", to: { cost: 43 } }]),
    );
  });

  it("counts a weekday from the day on record, not from today", () => {
    expect(meant("it was the wednesday he welded the step, not the saturday")).toMatchObject(
      onRecord(2, [{ change: "date", to: { on: "2024-05-08" } }]),
    );
  });

  it("is found by the work where another thing was told of last", () => {
    expect(meant("by the way the counter edge was glued with epoxy, not contact cement")).toMatchObject(
      onRecord(3, [{ change: "materials", add: ["epoxy"] }]),
    );
  });
});

describe("a word on how older work does", () => {
  it("is about that work and no new one", () => {
    expect(meant("the lid on the bathroom vent is still tight after all that rain")).toMatchObject({
      is: "tell",
      about: 1,
    });
  });

  it("is not made of new work on the same thing", () => {
    expect(meant("bought and fitted another lid for the bathroom vent today, 41 dollars")).toMatchObject({
      is: "tell",
      about: null,
    });
  });
});

describe("what a message names", () => {
  it("is looked up by every name of a thing", () => {
    expect(thingsIn("those hubs again", NOW)).toContain("wheel-bearing");
    expect(thingsIn("lovely evening", NOW)).toEqual([]);
  });
});

describe("a date counted from the one on record", () => {
  it("lies before it where the record is late", () => {
    expect(shiftIn("you have that a week late")).toEqual({ shift: { days: -7 } });
    expect(shiftIn("that is two days early")).toEqual({ shift: { days: 2 } });
    expect(shiftIn("it was the weekend before")).toEqual({ shift: { days: -7 } });
  });
});
