import { describe, expect, it } from "vitest";
import { findTemperature, temperatureAnswered } from "../../nlp/temperature.ts";

describe("a temperature in words", () => {
  it.each([
    ["epoxied the tank corner at noon, it's 50 degrees", "fahrenheit", 10],
    ["it's 12 degrees in here", "celsius", 12],
    ["about 68F out", "celsius", 20],
    ["10 °C under the rig", "fahrenheit", 10],
    ["siliconed 3 windows today", "celsius", undefined],
    ["two tubes of sealant", "fahrenheit", undefined],
  ] as const)("%s, usually in %s", (text, usual, celsius) => {
    const found = findTemperature(text, usual);
    if (celsius === undefined) expect(found).toBeUndefined();
    else expect(found).toBeCloseTo(celsius, 6);
  });

  it("is a bare number only in an answer", () => {
    expect(temperatureAnswered("about 20", "celsius")).toBe(20);
    expect(temperatureAnswered("68", "fahrenheit")).toBeCloseTo(20, 6);
    expect(temperatureAnswered("cold", "celsius")).toBeUndefined();
    expect(temperatureAnswered("thats the one", "celsius")).toBeUndefined();
  });
});
