import { describe, expect, it } from "vitest";
import { tickIn } from "../../../nlp/understand/tick.ts";
import { EMPTY_SCENE } from "../../../shared/memory/scene.ts";

describe("something taken off the list by name", () => {
  it.each([
    "scratch the anode rod off the list",
    "the anode rod can come off the list",
    "tick off the anode rod",
  ])("%s", (words) => {
    expect(tickIn(words, EMPTY_SCENE)).toMatchObject({ is: "tick" });
  });

  it("is no story in which something goes off", () => {
    const words =
      "scratch the deadbolt from august it was never touched and quit sticking when it cooled off";
    expect(tickIn(words, EMPTY_SCENE)).toBeUndefined();
  });
});
