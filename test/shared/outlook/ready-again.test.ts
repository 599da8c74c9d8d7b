import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { CURES, celsius, cureOf, readyAgain, slowdown } from "../../../shared/outlook/ready-again.ts";

const noon = Temporal.ZonedDateTime.from("2026-05-02T12:00[America/Denver]");
const hoursTo = (then: Temporal.ZonedDateTime) => noon.until(then).total("hours");
const ready = (material: string, fahrenheit: number) => {
  const found = readyAgain({ material, applied: noon, tempC: celsius(fahrenheit) });
  if (found === undefined) throw new Error(`${material} does not cure.`);
  return found;
};

describe("cure at another temperature", () => {
  // Maker's figures quoted on a boat-building page: full cure 5 days at 77 degF, 10 days at 59 degF.
  it("doubles for 18 degF of cold", () => {
    expect(5 * slowdown(2, celsius(77), celsius(59))).toBeCloseTo(10, 9);
  });

  // A maker's sheet, from memory: pot life 40 to 50 minutes at 72 degF, 15 to 20 at 95 degF; solid 20 to 24 h and 6 to 8 h.
  it("comes near a data sheet for a slow hardener, on the safe side", () => {
    const factor = slowdown(2, celsius(72), celsius(95));
    expect(45 * factor).toBeGreaterThan(15);
    expect(45 * factor).toBeLessThan(20);
    expect(22 * factor).toBeGreaterThan(8);
  });

  // Arrhenius with R = 8.314 J/(mol K): doubling from 20 to 30 degC is an activation energy of 51.2 kJ/mol, which is
  // the usual range of epoxy.
  it("is the Arrhenius law at its usual activation energy", () => {
    const arrhenius = Math.exp((51_213.3 / 8.314) * (1 / 293.15 - 1 / 303.15));
    expect(1 / slowdown(2, 20, 30)).toBeCloseTo(arrhenius, 4);
  });
});

describe("ready again", () => {
  it("takes longer in the cold and never less to load than to handle", () => {
    for (const { words } of CURES) {
      const [word] = words;
      if (word === undefined) continue;
      const [cold, warm] = [ready(word, 55), ready(word, 80)];
      expect(hoursTo(cold.load)).toBeGreaterThanOrEqual(hoursTo(warm.load));
      expect(hoursTo(warm.load)).toBeGreaterThanOrEqual(hoursTo(warm.handle));
    }
  });

  it("puts epoxy at 50 degF at about twice its hours at 70 degF", () => {
    expect(hoursTo(ready("marine epoxy", 50).load) / hoursTo(ready("marine epoxy", 70).load)).toBeCloseTo(
      2 ** (20 / 18),
      1,
    );
  });

  it("says so when it is too cold to cure", () => {
    expect(ready("epoxy", 35)).toMatchObject({ tooCold: true });
    expect(ready("epoxy", 35).explain).toContain("too cold");
    expect(ready("epoxy", 60).tooCold).toBe(false);
  });

  it("always defers to the product's own sheet", () => {
    for (const { words } of CURES)
      for (const fahrenheit of [20, 50, 90])
        expect(ready(words[0] ?? "", fahrenheit).explain).toContain("own sheet");
  });

  it.each([
    ["five minute epoxy", "quick epoxy"],
    ["two part epoxy resin", "epoxy"],
    ["plumbers epoxy", "epoxy putty"],
    ["self-leveling sealant", "lap sealant"],
    ["silicone", "silicone"],
    ["polyurethane sealant", "polyurethane sealant"],
    ["construction adhesive", "construction adhesive"],
    ["pvc cement", "pipe cement"],
    ["sealant", "sealant"],
  ])("knows %s", (material, say) => {
    expect(cureOf(material)?.say).toBe(say);
  });

  it.each([
    "butyl tape",
    "silicone tape",
    "glass cloth",
    "stainless screw",
    "silicone grease",
    "marine grease",
    "anode rod",
  ])("knows that %s does not cure", (material) => {
    expect(cureOf(material)).toBeUndefined();
  });
});
