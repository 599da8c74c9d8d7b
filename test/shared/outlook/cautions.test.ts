import { describe, expect, it } from "vitest";
import { CAUTIONS, cautionFor, type Work } from "../../../shared/outlook/cautions.ts";
import { ACTIONS, COMPONENTS } from "../../../shared/vocabulary.ts";

const caution = (work: Partial<Work> & Pick<Work, "component">) =>
  cautionFor({ action: "repair", materials: [], ...work });

describe("cautions", () => {
  it.each([
    [{ component: "gas-line", action: "replace" }, /licensed/],
    [{ component: "furnace", action: "clean", text: "the burner had a yellow flame" }, /licensed/],
    [{ component: "outlet", action: "replace" }, /licensed electrician/],
    [{ component: "brake", action: "adjust" }, /walking pace/],
    [{ component: "wheel-bearing", action: "lubricate" }, /10, 25 and 50 miles/],
    [{ component: "roof-seam", action: "seal" }, /ladder/],
    [{ component: "black-tank", action: "patch" }, /gloves/i],
    [{ component: "gray-tank", action: "weld" }, /gas that burns/],
    [{ component: "cabinet", action: "refasten", materials: ["epoxy"] }, /gloves/],
    [{ component: "floor", action: "refasten", materials: ["contact cement"] }, /air/],
    [{ component: "underbelly", action: "refasten" }, /stands/],
    [{ component: "battery", action: "replace" }, /negative/],
    [{ component: "generator", action: "repair" }, /20 feet/],
    [{ component: "wiring", action: "rewire", text: "pulled a new 120 volt run" }, /electrician/],
  ] as const)("are given for %o", (work, words) => {
    expect(caution(work)).toMatch(words);
  });

  it.each([
    { component: "cabinet", action: "refasten", materials: ["screw"] },
    { component: "blind", action: "replace" },
    { component: "wiring", action: "rewire", text: "new crimp on the porch light" },
    { component: "roof", action: "inspect" },
    { component: "faucet", action: "replace" },
    { component: "interior-light", action: "replace", materials: ["led fixture"] },
  ] as const)("are kept back for %o", (work) => {
    expect(caution(work)).toBeNull();
  });

  it("are at most one, short, and each row can be reached", () => {
    for (const { say } of CAUTIONS) expect(say.length).toBeLessThan(231);
    const reached = new Set<string | null>();
    const words = [undefined, ...CAUTIONS.flatMap((row) => row.words ?? [])];
    for (const component of COMPONENTS)
      for (const action of ACTIONS)
        for (const text of words) reached.add(caution({ component, action, text: text ?? "" }));
    for (const { say } of CAUTIONS) expect(reached).toContain(say);
  });
});
