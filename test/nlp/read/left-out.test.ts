import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import { recognised } from "../../../nlp/read/recognised.ts";
import { scan } from "../../../nlp/read/scan.ts";

const moment = {
  said: "2025-09-16T18:30:00-06:00",
  zone: "America/Denver",
  hemisphere: "north",
} as const;
const toldIn = (text: string) =>
  read(text, moment).records.map(({ fields }) => `${fields.kind} ${fields.component}`);

describe("no record", () => {
  it.each([
    "nearly ordered a new awning last night, had the card out and all, then thought better of it",
    "For weeks I had considered replacing both roof vents. Having seen the price I have dropped the idea.",
    "was going to replace the water pump but talked myself out of it",
    "stood in the shop with a brand new water pump in the cart and then i put it back",
  ])("of what was weighed and let be: %s", (text) => {
    expect(toldIn(text)).toEqual([]);
  });

  it.each([
    "my brothers trailer: new converter, two batteries, solar on the roof",
    "thinking about my uncle's old caravan where he bedded every window on putty",
    "my neighbor's camper got a new furnace and two batteries put in last week",
  ])("of the rig of others: %s", (text) => {
    expect(toldIn(text)).toEqual([]);
  });

  it.each([
    "having my chips on the step",
    "turkey in the oven and the rain wont quit",
    "the wind died at last",
    "resealed the window before the wet sets in",
  ])("of what only sounds like trouble: %s", (text) => {
    expect(scan(text, moment).faults).toEqual([]);
  });
});

describe("the heat", () => {
  it("is no weather: it may quit", () => {
    expect(scan("the heat quit last night", moment).faults).not.toEqual([]);
  });
});

describe("what tows", () => {
  it("has trouble of its own", () => {
    expect(toldIn("towed 420 km yesterday and the aircon in the ute carked it halfway")).toEqual([]);
    expect(toldIn("the aircon in the bedroom carked it halfway")).toEqual(["fault air-conditioner"]);
    expect(toldIn("the awning on the truck camper tore")).toEqual(["fault awning"]);
  });
});

describe("somebody who was got to do it", () => {
  it("is no other owner whose tale is told", () => {
    const { muted } = recognised("had the fella down at the trailer place repack the wheel bearings", moment);
    expect([...muted].every((each) => each === 0)).toBe(true);
  });
});

describe("this year, said of a price", () => {
  it("is not when it was done", () => {
    const text =
      "water lines are done for the winter ran antifreeze through again twenty one dollars this year";
    expect(read(text, moment).records[0]?.fields.date).toBe("2025-09-16");
  });
});

describe("a record all the same", () => {
  it.each([
    ["i was going to bin the old vent cover but cleaned it up and put it back", "repair roof-vent"],
    ["had the furnace in the shop for a new igniter and put it back in on friday", "repair furnace"],
    [
      "was going to replace the water pump but changed my mind and cleaned the strainer instead",
      "repair water-pump",
    ],
    ["bought my brothers trailer in may and its roof leaked so i sealed it with lap sealant", "repair roof"],
    ["parked next to my dads van and put a new anode rod in the water heater", "repair water-heater"],
    ["the skylight chipped in the hail so i sealed it with epoxy", "repair skylight"],
    ["and the water pump keeps kicking in with no tap running, no idea why", "fault water-pump"],
  ])("%s", (text, told) => {
    expect(toldIn(text)).toEqual([told]);
  });
});

describe("use told with a look", () => {
  it("makes no work of it", () => {
    expect(toldIn("third trip now on the shower and not a drop underneath")).toEqual(["check shower"]);
  });
});
