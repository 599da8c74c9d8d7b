import { describe, expect, it } from "vitest";
import { deniedThenSaid } from "../../../nlp/correct/denied-then-said.ts";

describe("what something wasn't and what it was, with no mark between", () => {
  it.each([
    ["wasn't epoxy butyl tape", "no, it was butyl tape not epoxy"],
    ["it wasnt friday saturday", "no, it was saturday not friday"],
    ["wasnt the converter", undefined],
    ["wasn't butyl tape", undefined],
    ["wasnt silicone sealant", undefined],
    ["not lap sealant this time", undefined],
    ["it wasn't dry under the sink", undefined],
  ])("%s", (text, plainer) => {
    expect(deniedThenSaid(text)).toBe(plainer);
  });
});
