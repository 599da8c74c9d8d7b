import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";

const MOMENT = { said: "2025-08-03T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

const doer = (text: string): string | null | undefined => read(text, MOMENT).records[0]?.doneBy;

describe("who did the work", () => {
  it.each([
    ["my wife sealed the skylight while i made dinner", "my wife"],
    ["my son in law put new brake shoes on both sides sunday", "my son in law"],
    ["had the shop repack the bearings", "the shop"],
    ["had the fella at the trailer yard repack the hubs, a hundred and eighty", "the fella"],
    ["had the guy from town reseal the roof", "the guy"],
    ["got the boilermaker at camp to weld the crack in the frame", "the boilermaker"],
    ["gas man was here, changed the regulator. 70 euro", "gas man"],
    ["new converter in. 620. sparky in town did it", "sparky"],
    ["took it to the dealer, they replaced the converter", "the dealer"],
    ["the roof got resealed by a roofer", "a roofer"],
    ["neighbor came by wednesday and blew out the water lines for me", "neighbor"],
    ["the campground handyman replaced the kitchen tap", "the campground handyman"],
    ["the roof vent was letting in rain so he put mastic round it", "he"],
    ["craig put a new water pump in today, 40 bucks", "Craig"],
    ["so dave replaced the water pump", "Dave"],
    ["my cousin trev fixed the awning", "my cousin Trev"],
    ["Today Joost has glued the crack in the rear window", "Joost"],
    ["the water pump was replaced by greta last week", "Greta"],
  ])("%s", (text, who) => {
    expect(doer(text)).toBe(who);
  });

  it.each([
    "fixed the kitchen tap with my daughters help",
    "my daughter held the torch while i fixed the kitchen tap",
    "the fella next door helped me and we fitted a new awning arm",
    "my brother says the brakes squeal so i greased the wheel bearings",
    "replaced the water pump for my dad is coming to stay",
    "resealed the roof seam with butyl tape",
    "hi dave, replaced the water pump",
    "told craig i would so i greased the wheel bearings",
    "gertie got new tires today",
    "in Normanton replaced the water pump",
    "i musta scrubbed the breakaway switch with the wire brush",
    "Finaly fixed the kitchen tap",
  ])("the speaker: %s", (text) => {
    expect(doer(text)).toBeNull();
  });
});
