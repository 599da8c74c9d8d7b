import { describe, expect, it } from "vitest";
import { createDesk } from "../help/desk.ts";
import { NOW } from "../help/store.ts";

const WEEKS = 24 * 7;

/** A log with some work of weeks ago. */
const told = (...notes: readonly string[]) => {
  const desk = createDesk();
  for (const note of notes) desk.say(note);
  desk.clock.set(NOW.add({ hours: 9 * WEEKS }));
  return desk;
};

describe("a word on work that is known", () => {
  it("settles it as holding, though it names nothing", () => {
    const desk = told(
      "replaced the furnace igniter",
      "resealed the skylight over the shower with butyl tape",
    );
    const [reply] = desk.say("not a drop on the bathmat after all that rain");
    expect(reply).toMatch(/^Added to what I had\. Skylight.*Holding/);
  });

  it("settles it as failed, though it names nothing", () => {
    const desk = told("replaced the slide motor", "refastened the underbelly panel with rivets");
    const [reply] = desk.say("let go on the first cattle grid, flapping all the way home");
    expect(reply).toMatch(/^Added to what I had\. Underbelly.*Did not hold/);
    expect(desk.say("how many times has the underbelly let go")[0]).toMatch(/^Once/);
  });

  it("is none where nothing was done that it could be on", () => {
    const desk = told("towed 140 miles today");
    expect(desk.say("not a drop on the bathmat after all that rain")[0]).not.toContain("Added to");
  });
});

describe("work that names nothing", () => {
  it.each([
    [
      "gotta get a new water filter before the trip",
      "brown one's in the bin, clean one's in, and the tea tastes like tea",
      /^Water filter: replaced/,
    ],
    [
      "need to buy a new inverter",
      "stronger one is in since this morning, 165, we made two coffees and no beep",
      /^Inverter: replaced/,
    ],
  ])("is that of what was to be done: %s", (todo, done, reply) => {
    const desk = createDesk();
    desk.say("greased the awning arm with dry lube");
    desk.say(todo);
    desk.clock.set(NOW.add({ hours: 2 * WEEKS }));
    expect(desk.say(done)[0]).toMatch(reply);
    expect(desk.say("what's still open")[0]).not.toMatch(/filter|inverter/i);
  });

  it("is that of the one thing to be put in, where nothing else says which", () => {
    const desk = createDesk();
    desk.say("glued the loose vinyl by the door, 12 bucks");
    desk.say("need to buy a new sewer hose, this one has a split");
    desk.clock.set(NOW.add({ hours: 2 * WEEKS }));
    expect(desk.say("got the new one, 36 bucks, on and no drips")[0]).toMatch(/^Sewer hose: replaced/);
  });

  it("is none where nothing is told", () => {
    const desk = createDesk();
    desk.say("need to buy a new inverter");
    desk.clock.set(NOW.add({ hours: 2 * WEEKS }));
    expect(desk.say("went to the beach with the dog and the kids")[0]).not.toContain("nverter");
  });
});

describe("a sum that belongs to nothing known", () => {
  it("changes no record of long ago that nothing in the words speaks of", () => {
    const desk = createDesk();
    desk.say("glued the loose vinyl by the door, 12 bucks");
    desk.say("put new shoes in the brakes, 64 bucks");
    desk.say("oiled the awning arm");
    desk.clock.set(NOW.add({ hours: 40 * WEEKS }));
    desk.say("39 actually, just saw the docket");
    expect(desk.say("what did the brakes cost")[0]).toContain("$64");
  });
});
