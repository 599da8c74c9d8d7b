import { describe, expect, it } from "vitest";
import { keptChoices } from "../../bot/rig/care-choices.ts";
import { createDesk } from "../help/desk.ts";

const rowsOn = ({ store }: ReturnType<typeof createDesk>) => keptChoices(store).map(({ row }) => row);

describe("standing care in words", () => {
  it("is offered, and taken by a word", () => {
    const desk = createDesk();
    expect(desk.say("care")[0]).toContain("Shall I keep an eye on them?");
    expect(desk.say("let me pick")[0]).toContain("Standing care, 1 to 6");
    desk.say("switch the tire pressures on");
    expect(rowsOn(desk)).toEqual(["tire-pressure"]);
  });

  it("is all switched on by yes, right below the offer only", () => {
    const desk = createDesk();
    desk.say("care");
    desk.say("towed 40 miles today");
    desk.say("yes");
    expect(rowsOn(desk)).toEqual([]);
    desk.say("care");
    desk.say("yes please");
    expect(rowsOn(desk).length).toBeGreaterThan(40);
    desk.say("no more awning checks");
    expect(rowsOn(desk)).not.toContain("awning");
    desk.say("switch all care off");
    expect(rowsOn(desk)).toEqual([]);
  });

  it("switches the rows that are named, and takes it back", () => {
    const desk = createDesk();
    const [said] = desk.say("turn on the brake checks");
    expect(said?.split("\n")).toHaveLength(3);
    expect(rowsOn(desk)).toEqual(["brake-adjust", "brake-magnets", "brake-linings"]);
    desk.say("undo");
    expect(rowsOn(desk)).toEqual([]);
  });

  it("leaves a note about the thing itself alone", () => {
    const desk = createDesk();
    desk.say("switch the water heater on");
    desk.say("stop asking about the flux capacitor");
    expect(rowsOn(desk)).toEqual([]);
  });

  it("counts told work, and rests until the next time", () => {
    const desk = createDesk();
    desk.say("turn on the wheel bearing check");
    desk.say("repacked the wheel bearings today");
    expect(desk.say("we leave on 20 June 2026 for two weeks")[0]).not.toContain("bearings");
  });
});
