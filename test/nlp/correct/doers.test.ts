import { describe, expect, it } from "vitest";
import { offersIn } from "../../../nlp/correct/offers.ts";
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
