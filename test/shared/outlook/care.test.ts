import { describe, expect, it } from "vitest";
import type { KeptRecord, KeptUsage } from "../../../shared/history.ts";
import {
  CARE_ROWS,
  type CareChoice,
  careAnswered,
  careDue,
  HAPPENINGS,
  type Trip,
} from "../../../shared/outlook/index.ts";
import { day, kept, rigOn, used } from "./records.ts";

const on = (row: string, since = "2026-01-10", more: Partial<CareChoice> = {}): CareChoice => ({
  row,
  since: day(since),
  ...more,
});

const due = (
  choices: readonly CareChoice[],
  records: readonly KeptRecord[],
  today: string,
  usage: readonly KeptUsage[] = [],
  trip: Trip | null = null,
) => careDue({ choices, records, ...rigOn(today, usage, trip) });

const greased = kept("2026-03-01", {
  component: "wheel-bearing",
  action: "lubricate",
  materials: ["marine grease"],
});

describe("standing care", () => {
  // Trailer manuals and an axle maker's schedule: bearings at 12 months or 12,000 miles.
  it("falls due by time from the told work", () => {
    const [bearings] = due([on("wheel-bearings")], [greased], "2026-06-01");
    expect(bearings).toMatchObject({
      due: day("2027-03-01"),
      reason: "time",
      lastDone: day("2026-03-01"),
      lastRecord: greased.id,
    });
  });

  it("falls due by use when that comes first", () => {
    const towed = Array.from({ length: 12 }, (_, week) =>
      used(day("2026-03-05").add({ weeks: week }).toString(), 1100, "miles"),
    );
    const [bearings] = due([on("wheel-bearings")], [greased], "2026-06-01", towed);
    expect(bearings?.reason).toBe("use");
    expect(bearings?.due.toString().slice(0, 7)).toBe("2026-05");
  });

  it("starts afresh with work that is told", () => {
    const again = kept("2026-05-20", { component: "wheel-bearing", action: "lubricate" });
    expect(due([on("wheel-bearings")], [greased, again], "2026-06-01")[0]?.due).toEqual(day("2027-05-20"));
    expect(careAnswered(again)).toContain("wheel-bearings");
    expect(careAnswered(kept("2026-05-20", { component: "wheel-bearing", action: "inspect" }))).not.toContain(
      "wheel-bearings",
    );
  });

  it("does not take an intention or removed work for done", () => {
    const todo = kept("2026-05-20", {
      component: "wheel-bearing",
      action: "lubricate",
      kind: "todo",
      outcome: null,
    });
    const gone = {
      ...kept("2026-05-20", { component: "wheel-bearing", action: "lubricate" }),
      removed: true,
    };
    expect(due([on("wheel-bearings")], [greased, todo, gone], "2026-06-01")[0]?.lastRecord).toBe(greased.id);
  });

  it("answers a tick and a 'later'", () => {
    const [ticked] = due([on("extinguisher", "2026-01-10", { done: day("2026-05-25") })], [], "2026-06-01");
    expect(ticked).toMatchObject({ due: day("2026-06-24"), lastRecord: null });
    const [later] = due(
      [on("extinguisher", "2026-01-10", { notBefore: day("2026-07-04") })],
      [],
      "2026-06-01",
    );
    expect(later?.due).toEqual(day("2026-07-04"));
  });

  it("comes at the start of a season, by the hemisphere", () => {
    const { use } = rigOn("2026-06-01");
    const winterize = (hemisphere: "north" | "south") =>
      careDue({
        choices: [on("winterize", "2026-06-01")],
        records: [],
        use,
        trip: null,
        hemisphere,
      })[0]?.due.toString();
    expect(winterize("north")).toBe("2026-09-01");
    expect(winterize("south")).toBe("2027-03-01");
  });

  it("comes before every trip, but not twice for the same one", () => {
    const trip = { from: day("2026-06-12"), to: day("2026-06-30"), miles: 800 };
    const [coupler] = due([on("coupler")], [], "2026-06-01", [], trip);
    expect(coupler).toMatchObject({ due: day("2026-06-11"), reason: "trip" });
    expect(
      due([on("coupler", "2026-01-10", { done: day("2026-06-11") })], [], "2026-06-11", [], trip),
    ).toEqual([]);
    expect(due([on("coupler")], [], "2026-06-01")).toEqual([]);
  });

  // Two utility-trailer manuals: wheel nuts again at 10, 25 and 50 miles after a wheel went on.
  it("asks for the wheel nuts 10, 25 and 50 miles after wheel work", () => {
    const wheel = kept("2026-05-01", { component: "tire", action: "replace" });
    const towed = [
      used("2026-04-20", 5, "miles"),
      used("2026-05-03", 12, "miles"),
      used("2026-05-10", 20, "miles"),
      used("2026-05-20", 60, "miles"),
    ];
    const next = (done: string | null) =>
      due(
        [on("wheel-nuts", "2026-01-10", { done: done === null ? null : day(done) })],
        [wheel],
        "2026-06-01",
        towed,
      )[0];
    expect(next(null)).toMatchObject({ reason: "work", due: day("2026-05-04") });
    expect(next("2026-05-04")?.why).toContain("25 miles");
    expect(next("2026-05-11")?.why).toContain("50 miles");
    expect(next("2026-05-21")).toBeUndefined();
  });

  it("comes after what happened, until it is seen to", () => {
    const happened = new Map([["hail" as const, day("2026-05-28")]]);
    const [seams] = careDue({
      choices: [on("roof-sealant", "2026-03-10", { done: day("2026-03-15") })],
      records: [],
      happened,
      ...rigOn("2026-06-01"),
    });
    expect(seams).toMatchObject({ reason: "event", due: day("2026-05-29") });
    expect(seams?.why).toContain("after the hail (28 May)");
    const seenTo = kept("2026-05-29", { component: "roof-seam", action: "inspect", kind: "check" });
    const [after] = careDue({
      choices: [on("roof-sealant", "2026-03-10")],
      records: [seenTo],
      happened,
      ...rigOn("2026-06-01"),
    });
    expect(after?.reason).not.toBe("event");
  });

  it("comes at once after a gas fitting was opened, until it was tested", () => {
    const fitting = kept("2026-05-20", { component: "gas-regulator", action: "replace" });
    const test = kept("2026-05-20", { component: "gas-line", action: "test", kind: "check" });
    const reason = (records: readonly KeptRecord[]) =>
      due([on("gas-leak-test", "2026-01-10", { done: day("2026-01-10") })], records, "2026-06-01")[0]?.reason;
    expect(reason([fitting])).toBe("work");
    expect(reason([fitting, test])).toBe("time");
  });

  it("knows what to do after everything that may happen", () => {
    for (const what of HAPPENINGS)
      expect(CARE_ROWS.some((row) => row.afterEvents?.some(({ event }) => event === what))).toBe(true);
  });

  it("waits for the age from which a component is looked at", () => {
    const tires = kept("2025-05-01", { component: "tire", action: "replace" });
    expect(
      due([on("tire-age")], [tires], "2026-06-01")[0]
        ?.due.toString()
        .slice(0, 4),
    ).toBe("2030");
  });

  it("does not come all at once when everything is switched on", () => {
    const all = due(
      CARE_ROWS.map(({ id }) => on(id, "2026-06-01")),
      [],
      "2026-06-01",
    );
    const onDay = (date: string) => all.filter((one) => one.due.toString() === date).length;
    const busiest = Math.max(...all.map((one) => onDay(one.due.toString())));
    expect(all.length).toBeGreaterThan(40);
    expect(busiest).toBeLessThanOrEqual(6);
    expect(all.every((one) => one.due.toString() > "2026-06-01")).toBe(true);
  });
});
