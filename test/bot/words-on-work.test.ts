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

describe("another go at work that is known", () => {
  const wet = () => {
    const desk = createDesk();
    desk.say("the outside shower was dripping so i sealed the thread with plumbers tape");
    desk.clock.set(NOW.add({ hours: 2 * WEEKS }));
    return desk;
  };

  it("is on the same thing where what went in sounds like a thing of its own", () => {
    const desk = wet();
    expect(desk.say("ugh, drip drip, didnt take")[0]).toMatch(/Did not hold/);
    expect(desk.say("new washer instead, 80 cents")[0]).not.toMatch(/^Washer/);
  });

  it("is on the same thing where only what went in calls another to mind", () => {
    const desk = createDesk();
    desk.say("ran mastic round the skylight over the shower");
    desk.clock.set(NOW.add({ hours: 9 * WEEKS }));
    desk.say("the skylight is dripping again");
    expect(desk.say("scraped the lot off and did it over with a butyl strip, nine pound")[0]).toMatch(
      /^Skylight: sealed with butyl strip/,
    );
  });

  it("does what was to be put in, in as few words as that", () => {
    const desk = createDesk();
    desk.say("the handbrake cable is frayed, the brake man will do a new one in june");
    desk.clock.set(NOW.add({ hours: 4 * WEEKS }));
    expect(desk.say("He came. It is in. $70. Pulls even.")[0]).toMatch(/^Brake: replaced.*\$70/);
    expect(desk.say("what is open")[0]).not.toMatch(/brake/i);
  });

  it.each([
    "got a new doormat",
    "put the hook back up by the bed",
    "cut a new key for the lockers",
    "glued the seat where we eat",
  ])("is none where something else was worked on: %s", (said) => {
    const desk = createDesk();
    desk.say("ran mastic round the skylight over the shower");
    expect(desk.say(said)[0]).not.toMatch(/^Skylight/);
  });
});

describe("trouble told where it shows", () => {
  const mopped = () => {
    const desk = createDesk();
    desk.say("water on the floor by the toilet, so i tightened the two nuts at its base");
    desk.clock.set(NOW.add({ hours: 3 * 24 }));
    return desk;
  };

  it("is that the work on what it came from did not hold", () => {
    expect(mopped().say("floor's wet again")[0]).toMatch(/^Added to what I had\. Toilet.*Did not hold/);
  });

  it("is its own where it is not back, where more than one may be meant, and where the place was worked on itself", () => {
    expect(mopped().say("the floor has gone soft by the door")[0]).toMatch(/^Floor/);
    const two = mopped();
    two.say("stopped the drip from the water pump onto the floor with a new clamp");
    expect(two.say("floor's wet again")[0]).not.toMatch(/Did not hold/);
    const mended = mopped();
    mended.say("patched the floor with plywood");
    expect(mended.say("the floor is soft again")[0]).toMatch(/Floor/);
  });
});

describe("a thing by a name of its owner's", () => {
  it("is the one that was told of, where it reads as one of which nothing is known", () => {
    const desk = createDesk();
    desk.say("left rear stab jack is bent, leaving it till we get home");
    desk.clock.set(NOW.add({ hours: 2 * WEEKS }));
    expect(desk.say("bent that jack leg straight in the vise and put it back on")[0]).toMatch(/^Stabilizer/);
    expect(desk.say("anything left to do?")[0]).toMatch(/^Nothing is open/);
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
