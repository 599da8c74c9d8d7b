import { describe, expect, it } from "vitest";
import { plainDays } from "../../../nlp/correct/plain-days.ts";

describe("days of the week", () => {
  it.each([
    ["the ladder was wed not thurs", "the ladder was wednesday not thurs"],
    ["it was sat", "it was saturday"],
    ["not sun, mon", "not sunday, mon"],
    ["fitted it the friday after my shift", "fitted it the friday, after my shift"],
  ])("are written out: %s", (text, plainer) => {
    expect(plainDays(text)).toBe(plainer);
  });

  it.each([
    "we sat by the fire",
    "the sun was out",
    "they got wed in june",
    "the panel was in the sun all day",
    "the thursday after",
  ])("are none in: %s", (text) => {
    expect(plainDays(text)).toBe(text);
  });
});
