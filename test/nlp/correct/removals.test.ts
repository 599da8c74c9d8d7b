import { describe, expect, it } from "vitest";
import { removal } from "../../../nlp/correct/removals.ts";

describe("what turns out to be another's", () => {
  it.each([
    ["forget the awning bit, it's my cousin's camper", "delete the awning one"],
    ["lose the battery entry. It was Rosa's truck.", "delete the battery one"],
    ["honey scratch that ladder part that was dwaynes ladder", "delete the ladder one"],
    ["strike that faucet from the log, we were in the church van all week", "delete the faucet one"],
    ["drop skylight thing its my mums caravan", "delete the skylight one"],
    ["scrub the tire, the compressor quit before i got that far", "delete the tire one"],
    [
      "the toilet with the spray last feb, that was at the cabin. del",
      "delete the toilet with the spray last feb one",
    ],
    ["That step is my uncle's, he was away. So don't go putting it under ours.", "delete the step one"],
  ])("is taken away: %s", (text, plainer) => {
    expect(removal(text)).toBe(plainer);
  });

  it.each([
    "that tape was my brother's",
    "scratch the tape, that was my brother's tape",
    "cut the rusty frame part out",
    "I bought the lamp off my neighbor, don't count it under mine",
    "took the van to my sister's house and patched the roof",
    "scratch that, it was the gray tank",
    "forget the pump one, it was my aunt's camper, and I sealed our skylight",
    "don't put the fan on my list yet",
  ])("stays: %s", (text) => {
    expect(removal(text)).toBeUndefined();
  });
});
