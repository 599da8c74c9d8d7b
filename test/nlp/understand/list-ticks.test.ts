import { describe, expect, it } from "vitest";
import { listTicksIn } from "../../../nlp/understand/list-ticks.ts";

describe("ticks of a numbered list, by word", () => {
  it.each([
    ["tick 2", [2]],
    ["Tick off 1 and 3 please", [1, 3]],
    ["done with 4", [4]],
    ["number four's done", [4]],
    ["2, 5 and 6 are done", [2, 5, 6]],
    ["1-3 are sorted", [1, 2, 3]],
    ["did 1 through 3", [1, 2, 3]],
    ["the first one is done", [1]],
    ["We've seen to number 7", [7]],
  ])("%s", (text, lines) => {
    expect(listTicksIn(text)).toEqual({ lines, done: true, plain: false });
  });

  it.each([
    ["untick 2", [2]],
    ["not done 3", [3]],
    ["2 isn't done yet", [2]],
  ])("%s", (text, lines) => {
    expect(listTicksIn(text)).toEqual({ lines, done: false, plain: false });
  });

  it.each([
    ["3", [3]],
    ["1, 2 and 4", [1, 2, 4]],
    ["number two", [2]],
    ["all done", "all"],
    ["tick them all off", "all"],
    ["Everything's done", "all"],
  ])("%s only says so beside the list", (text, lines) => {
    expect(listTicksIn(text)).toEqual({ lines, done: true, plain: true });
  });

  it.each([
    "two tubes of sealant",
    "did 212 miles today",
    "checked 3 tires",
    "done",
    "we are home",
    "replaced 2 bolts on the step",
    "checked the tires",
    "1 is leaking again",
    "finished the roof",
  ])("not %s", (text) => {
    expect(listTicksIn(text)).toBeUndefined();
  });
});
