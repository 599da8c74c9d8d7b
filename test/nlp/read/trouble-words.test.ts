import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
const troubleIn = (text: string) => read(text, MOMENT).records.map(({ fields }) => fields.fault);

describe("trouble, in the words that tell it", () => {
  it.each([
    ["the shade over the top bunk has lost its spring", "the shade over the top bunk has lost its spring"],
    [
      "the detector down by the floor has started chirping and the book says to swap it",
      "the detector down by the floor has started chirping",
    ],
    ["the latch on the screen door has snapped off", "the latch on the screen door has snapped off"],
    ["the grey tank smells like a swamp again", "the grey tank smells like a swamp"],
    ["the generator is hunting up and down when it idles", "the generator is hunting up and down"],
    ["so the lamp over the bed is dead", "the lamp over the bed is dead"],
  ])("%s", (text, trouble) => {
    expect(troubleIn(text)).toEqual([trouble]);
  });
});
