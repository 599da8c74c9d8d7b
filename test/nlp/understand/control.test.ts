import { describe, expect, it } from "vitest";
import { controlIn } from "../../../nlp/understand/control.ts";

describe("a request to be shown something", () => {
  it.each([
    ["can i have the logbook", "logbook"],
    ["send me a pdf of it all", "logbook"],
    ["export everything", "table"],
    ["make me a spreadsheet", "table"],
    ["show a timeline", "picture"],
    ["draw me the whole chart please", "picture"],
    ["give me the calendar", "calendar"],
  ])("is known by what is asked for: %s", (words, what) => {
    expect(controlIn(words)).toEqual({ is: "show", what });
  });

  it.each([
    "the lock of the door went heavy i have put graphite in it",
    "i have to report that the fridge quit",
    "need to get up on the roof and the calendars fell down",
    "get some icing on the coupler",
  ])("is no note that sounds alike: %s", (words) => {
    expect(controlIn(words)).toBeUndefined();
  });
});
