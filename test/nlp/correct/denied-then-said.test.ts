import { describe, expect, it } from "vitest";
import { deniedThenSaid } from "../../../nlp/correct/denied-then-said.ts";

describe("what something wasn't and what it was, with no mark between or told right after", () => {
  it.each([
    ["wasn't epoxy butyl tape", "no, it was butyl tape not epoxy"],
    ["it wasnt friday saturday", "no, it was saturday not friday"],
    ["it was not last month, they made it in january", "no, it was in january not last month"],
    ["that wasn't silicone. i ran out, so i used butyl tape", "no, it was butyl tape not silicone"],
    ["it wasn't friday, too much rain on friday and saturday", undefined],
    ["it was not leaking, they made it in january", undefined],
    ["wasnt the converter", undefined],
    ["wasn't butyl tape", undefined],
    ["wasnt silicone sealant", undefined],
    ["not lap sealant this time", undefined],
    ["it wasn't dry under the sink", undefined],
  ])("%s", (text, plainer) => {
    expect(deniedThenSaid(text)).toBe(plainer);
  });
});
