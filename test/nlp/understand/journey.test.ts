import { describe, expect, it } from "vitest";
import { plain } from "../../../nlp/correct/pieces.ts";
import { journeyIn } from "../../../nlp/understand/journey.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

const journey = (text: string) => journeyIn(text, plain(text), MOMENT);

describe("a journey told", () => {
  it.each(["we're off on friday", "off tomorrow", "setting off on the 20th"])("is one: %s", (text) => {
    expect(journey(text)).toMatchObject({ is: "leave" });
  });

  it.each([
    "cut it off tonight",
    "took that off for friday",
    "turned off for the weekend",
    "shut it off until friday",
  ])("is none where something is switched or taken off: %s", (text) => {
    expect(journey(text)).toBeUndefined();
  });
});
