import { describe, expect, it } from "vitest";
import { nearMissRepair } from "../../../nlp/hear/near-misses.ts";
import { TRADE_PHRASES } from "../../../nlp/hear/trade-phrases.ts";

const putRight = nearMissRepair(TRADE_PHRASES);

describe("words put right by their sound", () => {
  it.each([
    ["greased the wheel barings today", "greased the wheel bearings today"],
    ["put butil tape behind it", "put butyl tape behind it"],
    ["The brake majnet is worn.", "The brake magnet is worn."],
  ])("%s", (heard, meant) => {
    const { text, repairs } = putRight(heard);
    expect(text).toBe(meant);
    expect(repairs).toHaveLength(1);
    const [repair] = repairs;
    expect(text.slice(repair?.start, repair?.end)).toBe(repair?.written);
    expect(heard).toContain(repair?.heard);
  });

  it.each([
    "the wind was bearing down on us and the brakes held",
    "we towed two hundred miles and camped four nights by the water",
    "the front door is fine and so is the roof vent",
    "no rot in the floor",
    "ran gas tape around the thread",
    "i put the wheel on the table",
    "",
  ])("leaves alone: %s", (heard) => expect(putRight(heard)).toEqual({ text: heard, repairs: [] }));

  it("changes nothing that is a name of the trade already", () => {
    for (const phrase of TRADE_PHRASES) {
      const said = `the ${phrase.join(" ")} is fine`;
      expect(putRight(said).text).toBe(said);
    }
  });

  it("knows the names that it is given", () => {
    const names = ["Kinnaird", "Pemberton", "Magpie"];
    expect(putRight("three nights at kinared farm", names).text).toBe("three nights at Kinnaird farm");
    for (const said of [
      "maggie did fine",
      "three nights at kinnaird farm",
      "the canard flew over",
      "a member ten",
    ])
      expect(putRight(said, names)).toEqual({ text: said, repairs: [] });
  });

  it("does not choose between two names of the same sound", () => {
    const phrases = [
      ["sail", "cloth"],
      ["sale", "cloth"],
    ];
    expect(nearMissRepair(phrases)("a piece of sayl cloth").text).toBe("a piece of sayl cloth");
  });
});
