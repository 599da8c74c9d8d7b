import { describe, expect, it } from "vitest";
import { tellsBuying, tellsNeedOf } from "../../../shared/memory/work.ts";

describe("stuff that is to be got", () => {
  it.each([
    ["need two tubes of lap sealant before we leave", ["lap sealant"]],
    ["next time in town pick up a can of penetrating oil", ["penetrating oil"]],
    ["we're out of dielectric grease", ["dielectric grease"]],
  ])("is told in %j", (text, materials) => {
    expect(tellsNeedOf(text, materials)).toBe(true);
  });

  it.each([
    ["need to seal the front seam with lap sealant", ["lap sealant"]],
    ["must go round the windows with butyl tape", ["butyl tape"]],
    ["need a hand with the awning", []],
  ])("is not told in %j", (text, materials) => {
    expect(tellsNeedOf(text, materials)).toBe(false);
  });
});

describe("what is to be bought", () => {
  it.each(["got to get a new hose", "must get a latch for the fridge", "need a new anode"])(
    "is told in %j",
    (text) => {
      expect(tellsBuying(text)).toBe(true);
    },
  );

  it.each([
    "got to get up there and seal the vent",
    "must get round to the hubs",
    "have to get it looked at",
  ])("is not told in %j", (text) => {
    expect(tellsBuying(text)).toBe(false);
  });
});
