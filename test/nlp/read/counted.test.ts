import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import { scan } from "../../../nlp/read/scan.ts";
import { singleUses } from "../../../nlp/read/single-uses.ts";

const moment = {
  said: "2025-09-16T18:30:00-06:00",
  zone: "America/Denver",
  hemisphere: "north",
} as const;
const amountsIn = (text: string) =>
  scan(text, moment).amounts.map(({ value, what }) => `${String(value)} ${what}`);
const exposureIn = (text: string) =>
  read(text, moment).records[0]?.fields.exposure.map(({ count, unit }) => `${String(count)} ${unit}`);
const usageIn = (text: string) => read(text, moment).usage;

describe("what is counted", () => {
  it.each([
    ["four or five windstorms since", ["4 storms"]],
    ["lasted two bloody days", ["2 days"]],
    ["through three Atlantic gales", ["3 storms"]],
    ["that has got eight hundred and forty k on it now", ["840 km"]],
    ["forty eight dollars and twenty two tank fills", ["48 money", "22 fills"]],
    ["twelve dollars and fifty cents", ["12.5 money"]],
    ["run it oh nine nights", ["9 nights"]],
    ["put up a light where there wasn't one thirty five bucks", ["35 money"]],
  ])("%s", (text, amounts) => {
    expect(amountsIn(text)).toEqual(amounts);
  });

  it("is put right only by what is counted alike", () => {
    const { exposure } = read(
      "had new shackle bolts put in and i have done five thousand miles on that and no squeak no wander uh three weeks ago the fridge door came off so i glued it",
      moment,
    ).records[0]?.fields ?? { exposure: [] };
    expect(exposure).toEqual([{ count: 5000, unit: "miles" }]);
  });
});

describe("what a fix has been through", () => {
  it.each([
    ["put a new diaphragm in the water pump in june. third trip now and it still primes", ["3 trips"]],
    ["bolted the fresh tank strap back on in may, filled it twice since and no sag", ["2 fills"]],
  ])("%s", (text, exposure) => {
    expect(exposureIn(text)).toEqual(exposure);
  });

  it("may be one storm, told without any word before it", () => {
    const heard = scan("monsoon came through and not a drop", moment);
    expect(singleUses(heard, { from: 0, to: heard.tokens.length })[0]?.value).toEqual({
      count: 1,
      unit: "storms",
    });
  });

  it("is not the life of what was there before", () => {
    const { fields } =
      read("belly patch tore loose after 600 mi. riveted sheet aluminum over the hole, $58", moment)
        .records[0] ?? {};
    expect(fields?.exposure).toEqual([]);
    expect(fields?.outcome).toBe("untested");
  });

  it("is no use of the rig as well", () => {
    const text =
      "put a new brake cable on in october and we have had her up to the cape and back so eleven hundred km and it has stretched";
    expect(exposureIn(text)).toEqual(["1100 km"]);
    expect(usageIn(text)).toEqual([]);
  });
});
