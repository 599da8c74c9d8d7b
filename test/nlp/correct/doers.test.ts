import { describe, expect, it } from "vitest";
import { offersIn } from "../../../nlp/correct/offers.ts";
import { isBystander } from "../../../nlp/correct/only-pointing.ts";
import { scan } from "../../../nlp/read/scan.ts";
import type { RecordFields } from "../../../shared/record.ts";

const MOMENT = { said: "2025-06-16T18:30:00+01:00", zone: "Europe/London", hemisphere: "north" } as const;
const STRAP: RecordFields = {
  kind: "repair",
  component: "gray-tank",
  where: null,
  action: "refasten",
  materials: ["galvanised strap"],
  date: "2025-06-16",
  outcome: "untested",
  exposure: [],
  cost: 32,
  fault: null,
  due: null,
};

describe("who may have done it", () => {
  it.each([
    ["not the yard, it was dave next door", ["dave next door"]],
    ["it wasn't the shop, it was my cousin", ["my cousin"]],
    ["not the dealer, that was us", [null]],
    ["not the strap, it was the bolt", []],
  ])("%s", (text, doers) => {
    const said = offersIn(text, MOMENT, STRAP).flatMap(({ change }) =>
      change.change === "done-by" ? [change.to] : [],
    );
    expect(said).toEqual(doers);
  });
});

describe("somebody in a story", () => {
  const boundIn = (text: string): readonly (string | null)[] =>
    offersIn(text, MOMENT, STRAP)
      .filter((offer) => !isBystander(offer, scan(text, MOMENT).tokens))
      .flatMap(({ change }) => (change.change === "done-by" ? [change.to] : []));

  it.each([
    "the wife laughed so hard that she dropped her tea, it was copper and here is the packet",
    "went to show it off to the lad at the counter and no, it is copper that I had off them",
  ])("is not the one who did it: %s", (text) => {
    expect(boundIn(text)).toEqual([]);
  });
  it.each([
    ["I only held the ladder and made the tea, it was actually my cousin up there", "my cousin"],
    ["turns out the lad next door fitted it while I was off getting the chips", "the lad"],
  ])("is where work is told of them: %s", (text, doer) => {
    expect(boundIn(text)).toEqual([doer]);
  });
});
