import { describe, expect, it } from "vitest";
import type { KeptRecord } from "../../../shared/history.ts";
import { careDue, DEFAULT_SETTINGS, leavingList, outlooksOf } from "../../../shared/outlook/index.ts";
import { day, kept, rigOn, verdict, withVerdicts } from "./records.ts";

const trip = { from: day("2026-06-12"), to: day("2026-10-12"), miles: 3000 };

const list = (
  records: readonly KeptRecord[],
  rows: readonly string[] = [],
  ticked: readonly string[] = [],
) => {
  const rig = rigOn("2026-06-01", [], trip);
  const care = careDue({ ...rig, records, choices: rows.map((row) => ({ row, since: day("2026-05-01") })) });
  return leavingList({
    records,
    outlooks: outlooksOf({ ...rig, records }),
    care,
    trip,
    settings: DEFAULT_SETTINGS,
    ticked: new Set(ticked),
  });
};

const lamp = kept("2026-05-20", {
  component: "exterior-light",
  kind: "fault",
  outcome: null,
  fault: "left marker dead",
});
const pump = kept("2026-05-20", { component: "water-pump", kind: "todo", action: "replace", outcome: null });
const shade = kept("2026-05-20", { component: "blind", kind: "todo", action: "repair", outcome: null });
const taped = withVerdicts(
  kept("2025-06-01", { component: "underbelly", action: "patch", materials: ["repair tape"] }),
  verdict("holding", "2026-05-30"),
);
const hinge = withVerdicts(
  kept("2025-06-01", { component: "cabinet", action: "refasten", materials: ["screw"] }),
  verdict("holding", "2026-05-30"),
);

describe("leaving list", () => {
  it("puts what can hurt first and a nuisance last", () => {
    const items = list([shade, pump, lamp, taped, hinge], ["coupler", "awning"]);
    expect(items[0]).toMatchObject({ what: "open", record: lamp.id });
    expect(items.map(({ weight }) => weight)).toEqual(
      items.map(({ weight }) => weight).toSorted((a, b) => b - a),
    );
    expect(items.findIndex(({ record }) => record === shade.id)).toBeGreaterThan(
      items.findIndex(({ row }) => row === "coupler"),
    );
  });

  it("names what may fail on the trip, with the odds", () => {
    const item = list([taped]).find(({ record }) => record === taped.id);
    expect(item?.what).toBe("may-fail");
    expect(item?.text).toMatch(/about 1 in \d+/);
  });

  it("tells buying from doing", () => {
    expect(
      list([pump, shade])
        .map(({ what }) => what)
        .toSorted(),
    ).toEqual(["buy", "todo"]);
  });

  it("names a fix that has failed and has not been redone", () => {
    const failed = withVerdicts(
      kept("2026-02-01", { component: "sink", action: "seal" }),
      verdict("failed", "2026-05-01"),
    );
    expect(list([failed])).toMatchObject([{ what: "open", record: failed.id }]);
  });

  it("leaves out what is settled, done, gone or good for the trip", () => {
    const quiet = [
      { ...lamp, settled: true },
      { ...pump, closedBy: 12 },
      { ...shade, removed: true },
      withVerdicts(
        kept("2025-06-01", { component: "interior-light", action: "replace" }),
        verdict("holding", "2026-05-30"),
      ),
    ];
    expect(list(quiet)).toEqual([]);
  });

  it("keeps its keys when it is made again", () => {
    const keys = (records: readonly KeptRecord[]) => list(records, ["coupler"]).map(({ key }) => key);
    expect(keys([lamp, pump, taped])).toEqual(expect.arrayContaining(keys([lamp, pump])));
    expect(new Set(keys([lamp, pump, taped])).size).toBe(keys([lamp, pump, taped]).length);
  });
});
