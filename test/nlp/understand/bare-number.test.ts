import { describe, expect, it } from "vitest";
import { isBareNumber } from "../../../nlp/understand/bare-number.ts";

describe("a number and nothing else", () => {
  it.each(["60", "about 60 degrees", "it's 14 c out here", "sixty or so", "-5", "$240", "around 1200 miles"])(
    "%s",
    (text) => {
      expect(isBareNumber(text)).toBe(true);
    },
  );
  it.each([
    "total spent in 2025?",
    "towed 212 miles today",
    "2 lug nuts missing",
    "still dry",
    "and the second time",
    "patched it with 2 tubes",
    "",
  ])("not: %s", (text) => {
    expect(isBareNumber(text)).toBe(false);
  });
});
