import { describe, expect, it } from "vitest";
import { outcomeIn } from "../../../nlp/understand/verdict.ts";

describe("a short word on how work does", () => {
  it.each([
    ["still weeping a little", "partly"],
    ["damp at the corner", "partly"],
    ["weeping again", "failed"],
    ["its damp again after the rain", "failed"],
    ["that cement has cracked in the heat and its weeping again", "failed"],
    ["the bead has shrunk", "failed"],
    ["no it holds now", "holding"],
    ["not a drop", "holding"],
    ["havent looked yet", "later"],
    ["still squeaks less", "partly"],
    ["frayed right by the clamp", "failed"],
  ] as const)("%s: %s", (words, outcome) => {
    expect(outcomeIn(words)).toBe(outcome);
  });
});
