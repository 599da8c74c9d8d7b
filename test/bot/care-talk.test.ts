import { describe, expect, it } from "vitest";
import { sendNudges } from "../../bot/nudges/send-nudges.ts";
import { keptChoices } from "../../bot/rig/care-choices.ts";
import { keptHappenings } from "../../bot/rig/happened.ts";
import { createDesk } from "../help/desk.ts";
import { NOW } from "../help/store.ts";

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

describe("a nudge about care", () => {
  const nudged = () => {
    const desk = createDesk();
    for (const wanted of ["gas alarm", "co alarm", "smoke alarm"]) desk.say(`turn on the ${wanted} check`);
    const later = NOW.add({ hours: 24 * 30 });
    sendNudges(desk.store, later);
    desk.clock.set(later);
    return desk;
  };
  const doneOn = ({ store }: ReturnType<typeof createDesk>) =>
    keptChoices(store).filter(({ done }) => done !== null).length;

  it("takes done for all that was asked, once", () => {
    const desk = nudged();
    expect(desk.say("all done").at(-1)?.split("\n")).toHaveLength(3);
    expect(doneOn(desk)).toBe(3);
    expect(desk.say("done")[0]).not.toContain("alarm");
  });

  it("takes some by number and puts the rest off", () => {
    const desk = nudged();
    const said = desk.say("2 done, the rest later").at(-1);
    expect(said?.match(/: done\./g)).toHaveLength(1);
    expect(said?.match(/ask again in a week/g)).toHaveLength(2);
    expect(doneOn(desk)).toBe(1);
  });
});

describe("what happens to the rig", () => {
  it("makes the care due that it calls for, until that is told as done", () => {
    const desk = createDesk();
    desk.say("turn on the roof sealant check");
    desk.say("went over the roof seams today, all good");
    expect(desk.say("big hailstorm today")[0]).toContain("time to go over the roof's seams");
    expect(desk.say("what's due?")[0]).not.toContain("Now: Go over the roof");
    desk.clock.set(NOW.add({ hours: 48 }));
    expect(desk.say("hailed again today")[0]).toContain("I'll come back to it.");
    desk.clock.set(NOW.add({ hours: 24 * 4 }));
    expect(desk.say("what's due?")[0]).toContain("Now: Go over the roof's seams");
    desk.say("went over the roof seams, nothing cracked");
    expect(desk.say("what's due?")[0]).not.toContain("Now: Go over the roof");
  });

  it("is told in a word even where the care is off, and forgotten on undo", () => {
    const desk = createDesk();
    expect(desk.say("hit a nasty pothole")[0]).toContain("re-torque the wheel nuts");
    expect(keptHappenings(desk.store)).toHaveProperty("knock");
    desk.say("undo");
    expect(keptHappenings(desk.store)).toEqual({});
  });

  it("adds nothing to told work that has seen to it", () => {
    const desk = createDesk();
    expect(desk.say("resealed the roof seam after the hailstorm yesterday")[0]).not.toContain("time to");
  });
});
