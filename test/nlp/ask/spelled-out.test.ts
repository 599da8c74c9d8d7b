import { describe, expect, it } from "vitest";
import { spelledOut } from "../../../nlp/ask/spelled-out.ts";

describe("clipped words written out", () => {
  it.each([
    ["wht did u put on it", "what did you put on it"],
    ["sealin n tapd", "sealing and taped"],
    ["evrything u did this yr", "everything you did this year"],
    ["stuff 2 get in town", "stuff to get in town"],
    ["tot $ this summr", "total money this summer"],
    ["snk trap drips agn", "sink trap drips again"],
    ["cost of butyl job on wndow", "cost of butyl job on window"],
    ["did Walt do the brgs", "did Walt do the bearings"],
  ])("%s", (short, long) => {
    expect(spelledOut(short)).toBe(long);
  });

  it.each([
    "the 2 bolts on the old step cost $12",
    "U-bolts, R95 the pair",
    "cut the mat and put it by the bed",
  ])("leaves as it is: %s", (text) => {
    expect(spelledOut(text)).toBe(text);
  });
});
