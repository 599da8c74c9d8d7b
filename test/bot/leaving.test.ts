import { describe, expect, it } from "vitest";
import { createDesk } from "../help/desk.ts";

const ready = () => {
  const desk = createDesk();
  desk.say("the water pump leaks at its head");
  desk.say("need to replace the left marker light");
  desk.say("patched the gray tank with repair tape");
  const [list] = desk.say("we leave on 20 June 2026 for four months, about 3,000 miles");
  return { desk, list: list ?? "" };
};

const line = (list: string | undefined, number: number): string =>
  list?.split("\n").find((each) => each.startsWith(`${number}. `)) ?? "";

describe("the departure list", () => {
  it("takes ticks by word and keeps them until the trip is over", () => {
    const { desk, list } = ready();
    expect(list).toContain("3 things to see to");
    const [ticked] = desk.say("tick 1 and 2");
    expect(line(ticked, 1)).toMatch(/^1\. Done: /);
    expect(line(ticked, 2)).toMatch(/^2\. Done: /);
    expect(desk.say("are we ready to go?")[0]).toContain("1 thing to see to");
    expect(line(desk.say("untick 2")[0], 2)).not.toContain("Done");
  });

  it("shows all that is open where no trip is announced", () => {
    const desk = createDesk();
    desk.say("the water pump leaks at its head");
    const [reply] = desk.say("are we ready to go?");
    expect(reply).toContain("Water pump");
    expect(reply).toContain("No trip is announced.");
  });

  it("settles what was open, and opens it again when unticked", () => {
    const { desk, list } = ready();
    const pump = list.split("\n").findIndex((each) => each.includes("Water pump"));
    desk.say(`tick ${pump}`);
    expect(desk.say("what's open?")[0]).not.toContain("ump");
    desk.say(`untick ${pump}`);
    expect(desk.say("what's open?")[0]).toContain("ump");
  });

  it("keeps care that was seen to on the list, though it is not due any more", () => {
    const desk = createDesk();
    desk.say("turn on the wheel nut check");
    const [list] = desk.say("we leave on 20 May 2026 for four months");
    expect(line(list, 1)).toContain("Re-torque the wheel nuts");
    expect(line(desk.say("tick 1")[0], 1)).toBe("1. Done: Re-torque the wheel nuts.");
  });

  it("takes bare numbers only right below the list", () => {
    const { desk } = ready();
    expect(line(desk.say("2")[0], 2)).toContain("Done");
    desk.say("towed 40 miles today");
    expect(desk.say("3")[0]).not.toContain("Done");
    expect(line(desk.say("tick 3")[0], 3)).toContain("Done");
  });

  it("says how long it is when a line is not on it", () => {
    expect(ready().desk.say("tick 9")[0]).toContain("3 lines");
  });

  it("is done with one word", () => {
    expect(ready().desk.say("all done")[0]).toContain("All seen to.");
  });

  it("is gone when home, where a word answers for all that is asked", () => {
    const { desk } = ready();
    const [home] = desk.say("we're home");
    expect(home).toContain("How did this one hold?");
    expect(home).not.toContain("quietly let go");
    expect(desk.say("still good")[0]).toContain("still good. Next look");
    expect(desk.say("tick 1")[0]).not.toContain("Done");
  });
});
