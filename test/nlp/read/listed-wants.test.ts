import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

/** What is to be bought, as thing and part. */
const wanted = (text: string): readonly string[] =>
  read(text, MOMENT)
    .records.filter(({ fields }) => fields.kind === "todo")
    .map(({ fields: { component, materials } }) => [component, ...materials].join(" "));

describe("a list of what is wanted", () => {
  it.each<readonly [string, readonly string[]]>([
    [
      "shopping list: smoke alarm, anode rod for the water heater, skylight",
      ["smoke-alarm", "water-heater anode rod", "skylight"],
    ],
    [
      "shopping list: anode rod for the water heater, fuses, hose clamps for the gray tank",
      ["water-heater anode rod", "fuse-panel fuse", "gray-tank hose clamp"],
    ],
    ["to get: a sewer hose, milk, breakaway battery", ["sewer-hose", "breakaway-switch breakaway battery"]],
    [
      "need a new sewer hose, a smoke alarm and a water filter",
      ["sewer-hose", "smoke-alarm", "water-filter"],
    ],
    [
      "remember to order: window crank handle, awning fabric",
      ["window window crank handle", "awning awning fabric"],
    ],
    ["need:\n- sewer hose\n- smoke alarm\n- skylight", ["sewer-hose", "smoke-alarm", "skylight"]],
    [
      "shopping list: fridge vent cover, tube of butyl tape, dump valve",
      ["roof-vent fridge vent cover", "dump-valve"],
    ],
    ["must buy a new spare tyre and a water filter before the trip", ["tire", "water-filter"]],
  ])("is one intention for each thing: %s", (text, things) => {
    expect(wanted(text)).toEqual(things);
  });

  it.each<readonly [string, readonly string[]]>([
    ["we need a new roof vent lid and the water pump is leaking at the inlet", ["roof-vent roof vent lid"]],
    ["i need four tires before the season and the brakes squeal", ["tire"]],
    ["needs a new anode, and I cleaned the stove burner", ["water-heater anode"]],
    ["need new tires, the brakes were done by the shop", ["tire"]],
    ["need a water pump, not a furnace and not a toilet", ["water-pump"]],
    ["want a new awning, love the skylight and the fridge", ["awning"]],
  ])("ends where something else is told: %s", (text, things) => {
    expect(wanted(text)).toEqual(things);
  });

  it.each([
    "seen today: a heron, two windows lit, the awning of the neighbours",
    "parts fitted: water pump, anode rod",
    "nothing on the list! roof, windows, vents and skylight",
    "back from town! water pump, furnace, fridge",
    "to get in: entry door, then the step",
  ])("is none under a heading of something else: %s", (text) => {
    expect(wanted(text)).toEqual([]);
  });
});
