import { describe, expect, it } from "vitest";
import { placesSaid } from "../../../nlp/ask/places-said.ts";

describe("where on the rig a text says", () => {
  it.each([
    ["make that curbside rear on the trim", "curbside rear"],
    ["the driver side rear corner", "driver side rear corner"],
    ["took the left rear off and the tyre is holding", "left rear"],
    ["the seam at the front near the vent is dry", "front"],
    ["hauled down a back road left side tyre held fine", "back"],
    ["the bathroom tap", "bathroom"],
  ])("%s", (text, place) => {
    expect(placesSaid(text)).toBe(place);
  });
});
