import { describe, expect, it } from "vitest";
import type { KeptRecord } from "../../../shared/history.ts";
import { outlookOf, outlooksOf } from "../../../shared/outlook/index.ts";
import { kept, outlookOn, rigOn, seam, tank, verdict, withVerdicts } from "./records.ts";

describe("what the rig has shown", () => {
  const failedTwice = (next: KeptRecord) => {
    const first = withVerdicts(tank("2024-09-01"), verdict("failed", "2024-11-15"));
    const second = withVerdicts(tank("2024-11-20"), verdict("failed", "2025-02-10"));
    const line = next.line;
    return [{ ...first, line, closedBy: second.id }, { ...second, line, closedBy: next.id }, next];
  };

  it("shortens the life of a fix that failed twice before in the same place", () => {
    const next = tank("2026-05-01");
    const rig = rigOn("2026-05-20");
    const [alone, third] = [outlookOn(rig, next), outlookOn(rig, next, failedTwice(next))];
    expect(third.life.typical).toBeLessThan(alone.life.typical * 0.75);
    expect(third.goneSinceLastLook).toBeGreaterThan(alone.goneSinceLastLook);
  });

  it("counts the same way of fixing elsewhere less than the same place", () => {
    const next = tank("2026-05-01");
    const rig = rigOn("2026-05-20");
    const line = failedTwice(next);
    const elsewhere = line.map((record) =>
      record === next ? record : { ...record, line: record.id + 5000, closedBy: 1e6 },
    );
    const life = (records: readonly KeptRecord[], peers: readonly KeptRecord[]) =>
      outlookOf({ ...rig, record: next, line: records, peers })?.life.typical ?? 0;
    expect(life([next], elsewhere)).toBeLessThan(life([next], []));
    expect(life([next], elsewhere)).toBeGreaterThan(life(line, []));
  });

  it("is the same for one fix alone and for all of them in one pass", () => {
    const records = [
      ...failedTwice(tank("2026-05-01")),
      seam("2025-05-01"),
      seam("2025-08-01"),
      withVerdicts(seam("2024-08-01"), verdict("holding", "2026-04-01")),
    ];
    const rig = rigOn("2026-05-20");
    for (const one of outlooksOf({ ...rig, records })) {
      const record = records.find(({ id }) => id === one.record);
      if (record === undefined) throw new Error("An outlook of no record.");
      const alone = outlookOf({
        ...rig,
        record,
        line: records.filter(({ line }) => line === record.line),
        peers: records,
      });
      expect(alone?.nextLook).toEqual(one.nextLook);
      expect(alone?.goneSinceLastLook).toBeCloseTo(one.goneSinceLastLook, 10);
    }
  });

  it("takes a shape of life from many places that one place would not show", () => {
    const next = tank("2026-05-01");
    const places = (count: number) =>
      Array.from({ length: count }, () => ({
        ...withVerdicts(tank("2025-01-01"), verdict("failed", "2025-01-20")),
        closedBy: 1e6,
      }));
    const life = (count: number) =>
      outlookOf({ ...rigOn("2026-05-20"), record: next, line: [next], peers: places(count) })?.life.typical ??
      0;
    expect(life(1)).toBeLessThan(life(0));
    expect(life(4)).toBeLessThan(life(1));
    expect(life(12)).toBeLessThan(life(4));
  });

  it("knows from a good word told with the work that a later failure came after it", () => {
    const next = tank("2026-05-01");
    const tried = (...looks: Parameters<typeof verdict>[]) => ({
      ...withVerdicts(tank("2024-09-01"), ...looks.map((look) => verdict(...look))),
      line: next.line,
      closedBy: next.id,
    });
    const life = (earlier: KeptRecord) => outlookOn(rigOn("2026-05-20"), next, [earlier, next]).life.typical;
    const failed = ["failed", "2025-09-01"] as const;
    expect(life(tried(["holding", "2025-06-01"], [...failed]))).toBeGreaterThan(life(tried([...failed])));
  });
});

describe("a told exposure", () => {
  it("of a failed fix is the life it had", () => {
    const next = tank("2026-05-01");
    const failedAfter = (trips: number) => ({
      ...withVerdicts(tank("2024-01-01"), verdict("failed", "2026-04-30", [{ count: trips, unit: "trips" }])),
      line: next.line,
      closedBy: next.id,
    });
    const life = (trips: number) =>
      outlookOn(rigOn("2026-05-02"), next, [failedAfter(trips), next]).life.typical;
    expect(life(2)).toBeLessThan(life(60));
  });

  it("reads kilometres as miles", () => {
    const weld = (count: number, unit: "km" | "miles") =>
      withVerdicts(
        kept("2026-01-01", { component: "frame", action: "weld" }),
        verdict("holding", "2026-05-01", [{ count, unit }]),
      );
    const rig = rigOn("2026-05-02");
    const [metric, imperial] = [outlookOn(rig, weld(1609.344, "km")), outlookOn(rig, weld(1000, "miles"))];
    expect(metric.nextLook).toEqual(imperial.nextLook);
    expect(metric.life.typical).toBeCloseTo(imperial.life.typical, 6);
  });
});
