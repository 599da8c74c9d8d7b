import { describe, expect, it } from "vitest";
import type { Topic } from "../../../shared/memory/query.ts";
import { Rig, topic } from "./rig.ts";

const rig = () => {
  const told = new Rig();
  told.tell("2025-01-05", "the smoke alarm is out of date, need a new one", {
    kind: "todo",
    component: "smoke-alarm",
    action: "replace",
  });
  return told;
};
const loosely: Topic = { ...topic("stabilizer"), named: [{ component: "stabilizer", sure: 0.8 }] };

describe("a list asked of what only seems to be named", () => {
  it.each(["open", "buy"] as const)("is of all the rig, where nothing is on it for that: %s", (ask) => {
    const query =
      ask === "open" ? ({ ask, topic: loosely, period: null } as const) : ({ ask, topic: loosely } as const);
    expect(rig().ask(query)).toMatchObject({ because: "open-elsewhere", count: 1 });
  });
});

describe("a list asked of a thing by its name", () => {
  it("is empty where nothing is open on it", () => {
    expect(rig().ask({ ask: "open", topic: topic("stabilizer"), period: null })).toMatchObject({
      because: "nothing-open",
      records: [],
    });
  });
});

describe("whether there ever was work", () => {
  it("is asked of either of two things where the words may mean both", () => {
    const told = new Rig();
    told.tell("2025-01-05", "greased the landing gear", {
      component: "tongue-jack",
      action: "lubricate",
      date: "2025-01-05",
    });
    const named: Topic["named"] = [
      { component: "stabilizer", sure: 0.8 },
      { component: "tongue-jack", sure: 0.58 },
    ];
    const asked = (sure: number) =>
      told.ask({
        ask: "ever",
        topic: { ...topic(), named: named.map((each, at) => (at === 0 ? { ...each, sure } : each)) },
        period: null,
      }).verdict;
    expect(asked(0.8)).toBe("yes");
    expect(asked(1)).toBe("no");
  });
});
