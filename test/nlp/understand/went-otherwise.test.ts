import { describe, expect, it } from "vitest";
import { meant, putRightBy } from "./after-note.ts";

describe("how it went, told wrongly a minute ago", () => {
  it.each([
    ["cleaned the burner on the fridge and she is cooling again", "no its not cooling, milks warm", "failed"],
    [
      "tightened the trap under the kitchen sink and it doesnt leak now",
      "well it does still drip a wee bit, less than it was",
      "partly",
    ],
    [
      "greased the entry step and its smooth now",
      "make that better but not right, still squawks on the last inch",
      "partly",
    ],
    [
      "put a new cartridge in the faucet no more drip",
      "that was wishful, the water is shut off till may so i havent tested it yet",
      "untested",
    ],
    [
      "swapped the igniter on the cooktop, lights every time",
      "not every time, more like one go in two",
      "partly",
    ],
    [
      "Patched the awning fabric near the rail; it is holding well.",
      "Please strike 'holding well'. I haven't had it out yet.",
      "untested",
    ],
  ])("%s: %s", (note, text, outcome) => {
    const said = meant(note, text);
    expect(said.is).toBe("correct");
    expect(JSON.stringify(said)).toContain(`"outcome":"${outcome}"`);
  });
});

describe("how it went, told again", () => {
  it("is not struck out by a drop that there was not", () => {
    const said = putRightBy(
      "sealed the skylight with lap sealant, holding well",
      "not a drop, still holding well",
    );
    expect(said).not.toContain("untested");
  });
});

describe("in few words", () => {
  it.each([
    ["changed the anode rod in the water heater two weeks ago", "three weeks not two", "2025-08-26"],
    ["resealed the shower back in 2022", "23 sorry", "2023"],
    [
      "taped the split in the roof with butyl tape and brushed lap sealant over it",
      "roof coating went over it, not lap sealant. i dont own any lap sealant",
      '"drop":["lap sealant"],"add":["roof coating"],"how":"instead"',
    ],
    ["put a new smoke alarm up in the hallway", "its the same alarm, i only reset it", '"action":"reset"'],
    [
      "put a new anode rod in the water heater two weeks ago",
      "uh make it three weeks actually cause it was before the rally",
      "2025-08-26",
    ],
    [
      "welded the frame bracket with a rod",
      "put 12 bucks on that one, forgot the rod wasnt free",
      '"cost":12',
    ],
    [
      "Screwed the corner moulding back on with brass screws and butyl tape.",
      "The screws were stainless. I was thinking of the boat.",
      '"drop":["brass screw"],"add":["stainless screw"]',
    ],
  ])("%s: %s", (note, text, change) => {
    expect(putRightBy(note, text)).toContain(change);
  });

  it.each([
    [
      "descaled the hot water tank with citric acid",
      "vinegar it was love, the citric acid went in the kettle",
      "love",
    ],
    [
      "fridge vent cap resealed, butyl tape and lap sealant",
      "scrub the butyl, it was only lap sealant",
      '"clean"',
    ],
    [
      "regreased the coupler over the summer, still holding",
      "nah tell a lie, it was last autumn",
      '"failed"',
    ],
  ])("%s: %s, and no more than that", (note, text, other) => {
    expect(putRightBy(note, text)).not.toContain(other);
  });

  it("tells of more work of the kind", () => {
    const more = meant(
      "resealed the left rear corner trim with butyl tape",
      "not just the left, did the right rear corner trim too, same tape",
    );
    expect(more.is).toBe("tell");
  });

  it.each(["hang on someones at the door", "hang on theres someone at the door", "wait a sec"])(
    "%s: nothing yet",
    (text) => {
      expect(meant("spliced the wire to the left tail light", text)).toMatchObject({ is: "chat" });
    },
  );

  it("keeps a note that is told in a hurry", () => {
    const said = meant("greased the entry step", "hang on the dog chewed through the tow plug lead");
    expect(said.is).toBe("tell");
  });

  it("says that it is right as it is, and changes nothing", () => {
    expect(meant("rehung the entry door", "yep thats right, thats what i did")).toMatchObject({ is: "chat" });
  });
});
