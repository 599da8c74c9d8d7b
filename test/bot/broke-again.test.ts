import { describe, expect, it } from "vitest";
import { createDesk } from "../help/desk.ts";

describe("a fix that gave out", () => {
  it.each([
    [
      "found a crack in the crossmember behind the front axle, ground it out and welded it this morning",
      "well that crossmember cracked right back open so i beefed it up with a gusset plate this evening",
      "how many times has that crossmember failed",
    ],
    [
      "vinyl inside the door was curling so i glued it down with contact cement",
      "take two on the curly vinyl by the door: stuck it back down with epoxy",
      "how many times has the floor failed",
    ],
    [
      "ac was blowing warm so i cleaned the coils on it and that got her cold again",
      "the ac went back to blowing warm yesterday so i swapped the capacitor in it, thirty four dollars",
      "how many times has a fix on the ac failed",
    ],
    [
      "nipped up the olive on the cold pipe behind the fridge, it was weeping",
      "cold pipe weeping agn, chucked a push fit coupling on it",
      "how often did the pipe fix fail",
    ],
  ])("is known by what is told when it is done anew: %s", (first, second, question) => {
    const desk = createDesk();
    desk.say(first);
    desk.say(second);
    expect(desk.say(question)[0]).toMatch(/^Once\./);
  });
});

describe("right behind, right back open", () => {
  it("tell no side", () => {
    const desk = createDesk();
    expect(desk.say("patched the tear right behind the axle with belly tape")[0]).not.toContain("right");
    expect(desk.say("replaced the right rear tire")[0]).toContain("right");
  });
});
