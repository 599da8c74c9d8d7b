import { describe, expect, it } from "vitest";
import { seenToIn } from "../../../nlp/understand/seen-to.ts";

const seen = (text: string) => {
  const found = seenToIn(text);
  return found === undefined ? undefined : [Object.fromEntries(found.numbers), found.rest];
};

describe("what was seen to of what was asked", () => {
  it.each([
    ["done", {}, "done"],
    ["all done", {}, "done"],
    ["did them today", {}, "done"],
    ["Yes, checked", {}, "done"],
    ["later", {}, "later"],
    ["not now", {}, "later"],
    ["1 and 3 are done", { 1: "done", 3: "done" }, null],
    ["1 and 3 done, 2 later", { 1: "done", 2: "later", 3: "done" }, null],
    ["2 done, the rest later", { 2: "done" }, "later"],
    ["did 1, the others are done", { 1: "done" }, "done"],
  ] as const)("%s", (text, numbers, rest) => {
    expect(seen(text)).toEqual([numbers, rest]);
  });

  it.each([
    "replaced the alarm",
    "done with the roof, 2 tubes",
    "what is due?",
    "2",
    "still good but 1 leaks",
  ])("not %s", (text) => {
    expect(seen(text)).toBeUndefined();
  });
});
