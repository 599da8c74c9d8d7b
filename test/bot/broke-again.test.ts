import { describe, expect, it } from "vitest";
import { createDesk } from "../help/desk.ts";
import { NOW } from "../help/store.ts";

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
    [
      "covered a slit in the underbelly with duct tape",
      "the tape on the underbelly went to rags so i riveted a sheet of aluminum over it",
      "how many times has the underbelly failed",
    ],
    [
      "left marker light was out so i cleaned up the contacts and soldered the wire",
      "left marker light packed up on the hill so i put a whole new lamp on, 18 bucks",
      "how many times has a fix on that marker light died",
    ],
  ])("is known by what is told when it is done anew: %s", (first, second, question) => {
    const desk = createDesk();
    desk.say(first);
    desk.clock.set(NOW.add({ hours: 24 * 21 }));
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

describe("stuff that is spoken of when more work is done", () => {
  it.each([
    "put a bead of sealant round the foam strip on the window",
    "painted over the tape on the window",
  ])("has not let go where the work is done on it: %s", (second) => {
    const desk = createDesk();
    desk.say("sealed the window with foam strip and tape");
    desk.say(second);
    expect(desk.say("how many times has a fix on the window failed")[0]).toMatch(/^Never/);
  });
});
