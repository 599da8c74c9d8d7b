import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { carriesLook, outlookOf } from "../../../shared/outlook/index.ts";
import { day, daysOn, kept, outlookOn, rigOn, seam, tank, used, verdict, withVerdicts } from "./records.ts";

describe("which records carry a look", () => {
  it("is fixes in service", () => {
    expect(carriesLook(seam("2026-05-01"))).toBe(true);
    expect(carriesLook(withVerdicts(seam("2026-05-01"), verdict("holding", "2026-06-01")))).toBe(true);
    expect(
      carriesLook(kept("2026-05-01", { component: "water-pump", action: "clean", fault: "won't prime" })),
    ).toBe(true);
  });

  it("is neither looks, nor routine service, nor what is gone, failed or taken over", () => {
    const others = [
      kept("2026-05-01", { component: "roof", action: "inspect" }),
      kept("2026-05-01", { component: "roof", action: "inspect", kind: "check" }),
      kept("2026-05-01", { component: "wheel-bearing", action: "lubricate" }),
      kept("2026-05-01", { component: "ladder", action: "remove" }),
      kept("2026-05-01", { component: "window", kind: "todo", action: "seal", outcome: null }),
      kept("2026-05-01", { component: "window", kind: "fault", outcome: null }),
      withVerdicts(seam("2026-05-01"), verdict("failed", "2026-06-01")),
      { ...seam("2026-05-01"), closedBy: 999 },
      { ...seam("2026-05-01"), removed: true },
    ];
    for (const record of others)
      expect(outlookOf({ ...rigOn("2026-07-01"), record, line: [record], peers: [] })).toBeUndefined();
  });
});

describe("next look", () => {
  it("comes soon after the first use of a new fix", () => {
    const { nextLook } = outlookOn(rigOn("2026-06-01"), tank("2026-06-01"));
    expect(nextLook.reason).toBe("first-use");
    expect(daysOn("2026-06-01", nextLook.day)).toBeLessThan(15);
    expect(nextLook.byUse?.unit).toBe("fills");
  });

  it("comes after the first use even when a good word was given with the work", () => {
    const fresh = tank("2026-06-01");
    const praised = withVerdicts(fresh, verdict("holding", "2026-06-01"));
    const rig = rigOn("2026-06-01");
    expect(outlookOn(rig, praised).nextLook).toEqual(outlookOn(rig, fresh).nextLook);
  });

  it("comes sooner when the first use comes sooner", () => {
    const patch = kept("2026-06-01", { component: "frame", action: "weld" });
    const towed = rigOn("2026-06-03", [used("2026-06-02", 300, "miles")]);
    expect(daysOn("2026-06-01", outlookOn(towed, patch).nextLook.day)).toBeLessThan(
      daysOn("2026-06-01", outlookOn(rigOn("2026-06-03"), patch).nextLook.day),
    );
  });

  it("is not forced on what shows itself", () => {
    const lamp = kept("2026-06-01", { component: "interior-light", action: "replace" });
    expect(daysOn("2026-06-01", outlookOn(rigOn("2026-06-01"), lamp).nextLook.day)).toBeGreaterThan(120);
  });

  it("waits longer after a good look than after a half good one", () => {
    const good = withVerdicts(tank("2026-01-10"), verdict("holding", "2026-06-01"));
    const partly = withVerdicts(tank("2026-01-10"), verdict("partly", "2026-06-01"));
    const rig = rigOn("2026-06-01");
    expect(outlookOn(rig, partly).nextLook.reason).toBe("partly");
    expect(
      Temporal.PlainDate.compare(outlookOn(rig, partly).nextLook.day, outlookOn(rig, good).nextLook.day),
    ).toBe(-1);
  });

  // Published: makers ask for the roof's sealant to be looked at every six months (care table, "roof-sealant").
  it("is never later than a published interval", () => {
    const rig = rigOn("2026-06-01");
    const bead = withVerdicts(
      kept("2018-06-01", { component: "skylight", action: "seal", materials: ["butyl"] }),
      verdict("holding", "2026-06-01"),
    );
    expect(daysOn("2026-06-01", outlookOn(rig, bead).nextLook.day)).toBeLessThanOrEqual(183);
  });

  it("moves before departure when it would come due on the road", () => {
    const patch = withVerdicts(tank("2026-01-10"), verdict("holding", "2026-05-01"));
    const trip = { from: day("2026-06-12"), to: day("2026-12-20"), miles: 3000 };
    const { nextLook } = outlookOn(rigOn("2026-06-01", [], trip), patch);
    expect(nextLook).toMatchObject({ reason: "departure", day: day("2026-06-10") });
  });

  it("does not ask again on leaving for what was looked at just before", () => {
    const patch = withVerdicts(tank("2026-01-10"), verdict("holding", "2026-06-08"));
    const trip = { from: day("2026-06-12"), to: day("2026-12-20"), miles: 3000 };
    const { nextLook } = outlookOn(rigOn("2026-06-09", [], trip), patch);
    expect(Temporal.PlainDate.compare(nextLook.day, trip.from)).toBe(1);
  });

  it("is put off by 'later' and changes nothing else", () => {
    const record = tank("2026-06-01");
    const input = { ...rigOn("2026-06-10"), record, line: [record], peers: [] };
    const [plain, later] = [outlookOf(input), outlookOf({ ...input, notBefore: day("2026-06-20") })];
    expect(later?.nextLook).toMatchObject({ reason: "later", day: day("2026-06-20") });
    expect(later?.goneSinceLastLook).toBe(plain?.goneSinceLastLook);
    expect(later?.life).toEqual(plain?.life);
  });
});
