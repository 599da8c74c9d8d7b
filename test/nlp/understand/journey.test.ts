import { describe, expect, it } from "vitest";
import { plain } from "../../../nlp/correct/pieces.ts";
import { journeyIn } from "../../../nlp/understand/journey.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

const journey = (text: string) => journeyIn(text, plain(text), MOMENT);

describe("a journey told", () => {
  it.each([
    "we're off on friday",
    "off tomorrow",
    "right, off to the lake on saturday",
    "that's us off in the morning, the 20th",
    "setting off on the 20th",
  ])("is one: %s", (text) => {
    expect(journey(text)).toMatchObject({ is: "leave" });
  });

  it.each([
    "cut it off tonight",
    "took that off for friday",
    "turned off for the weekend",
    "shut it off until friday",
    "today i pulled the whole strip off the right front corner and bedded it on butyl tape",
    "ground all that crap off fri and melted a rod into it",
  ])("is none where something is switched or taken off: %s", (text) => {
    expect(journey(text)).toBeUndefined();
  });
});
