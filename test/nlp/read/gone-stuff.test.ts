import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";

const MOMENT = {
  said: "2024-10-06T18:30:00-07:00",
  zone: "America/Los_Angeles",
  hemisphere: "north",
} as const;
const last = (text: string) => read(text, MOMENT).records.at(-1)?.fields.materials;

describe("stuff that let go", () => {
  it.each([
    [
      "butyl on the rear corner trim dried out and leaked, so i pulled it and resealed it with polyurethane sealant",
      ["polyurethane sealant"],
    ],
    [
      "tape peeled off the ac shroud doing 65. patched it with aluminum plate and pop rivets, $7",
      ["aluminum plate", "pop rivet"],
    ],
  ])("is not what went in instead: %s", (text, materials) => {
    expect(last(text)?.toSorted()).toEqual(materials);
  });

  it.each([
    ["put epoxy on the crack in the tank and laid glass cloth over it", ["epoxy", "glass cloth"]],
    [
      "the vent leaked so i put fresh butyl tape on it and lap sealant over that",
      ["butyl tape", "lap sealant"],
    ],
  ])("is told apart from layers of one job: %s", (text, materials) => {
    expect(last(text)?.toSorted()).toEqual(materials);
  });
});

describe("work that took over from what let go", () => {
  it("has not failed itself, and was done just now", () => {
    const [only, ...others] = read(
      "silicone on the corner trim peeled off already so i redid it with butyl tape",
      MOMENT,
    ).records;
    expect(others).toEqual([]);
    expect(only?.fields).toMatchObject({
      materials: ["butyl tape"],
      outcome: "untested",
      date: "2024-10-06",
    });
  });
});
