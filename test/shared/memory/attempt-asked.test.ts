import { describe, expect, it } from "vitest";
import type { Attempt, Query } from "../../../shared/memory/query.ts";
import { Rig, topic } from "./rig.ts";

/** Three tries at one leak, the second told of last, and a cleaning between them. */
const told = (): Rig => {
  const rig = new Rig();
  rig.tell("2024-03-02", "taped the split in the gutter", {
    component: "gutter",
    action: "patch",
    materials: ["tape"],
    date: "2024-03-02",
  });
  rig.tell("2024-05-20", "cleaned the gutter out", {
    component: "gutter",
    action: "clean",
    date: "2024-05-20",
  });
  rig.tell("2024-08-08", "the gutter leaks again, welded the split", {
    component: "gutter",
    action: "weld",
    date: "2024-08-08",
  });
  rig.tell("2024-08-09", "before the welding i had glued that gutter in june", {
    component: "gutter",
    action: "seal",
    materials: ["glue"],
    date: "2024-06-10",
  });
  return rig;
};

const dateOf = (attempt: Attempt): string | null | undefined => {
  const query: Query = {
    ask: "last",
    topic: topic("gutter"),
    period: null,
    focus: "what",
    order: "newest",
    attempt,
  };
  return told().ask(query).records[0]?.fields.date;
};

describe("one of several tries", () => {
  it("is found by its number in time, care left out", () => {
    expect(dateOf({ nth: 2 })).toBe("2024-06-10");
    expect(dateOf({ nth: 3 })).toBe("2024-08-08");
  });
  it("is the one before the work named, or before the newest", () => {
    expect(dateOf({ before: ["weld"] })).toBe("2024-06-10");
    expect(dateOf({ before: ["seal"] })).toBe("2024-03-02");
    expect(dateOf({ before: [] })).toBe("2024-06-10");
  });
  it("is the newest where there are fewer", () => {
    expect(dateOf({ nth: 6 })).toBe("2024-08-08");
  });
});

describe("words that go with any work", () => {
  it("make no new tire of one that air was put in", () => {
    const rig = new Rig();
    rig.tell("2024-05-06", "put air in the new tire", {
      component: "tire",
      action: "charge",
      date: "2024-05-06",
    });
    const query: Query = {
      ask: "ever",
      topic: { ...topic("tire"), actions: ["replace", "install"], verbs: ["put new"] },
      period: null,
    };
    expect(rig.ask(query).verdict).toBe("no");
  });
});
