import { describe, expect, it } from "vitest";
import { happeningsIn } from "../../../nlp/understand/happenings.ts";

const MOMENT = { said: "2026-06-03T09:00:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
const told = (text: string) => happeningsIn(text, MOMENT).map(({ what }) => what);

describe("what happened to the rig", () => {
  it.each([
    ["hailstorm last night, big stones", ["hail"]],
    ["We had a huge thunderstorm and it poured all night", ["thunder", "rain"]],
    ["a branch came down on the roof", ["fall"]],
    ["hit a nasty pothole near the lake", ["knock"]],
    ["clipped the kerb with the right wheels", ["knock"]],
    ["blew the left rear tire on the highway", ["blowout"]],
    ["got her out of storage today", ["unstored"]],
    ["it goes into storage for the winter on Friday", ["storing"]],
    ["drove through a flooded road", ["flood"]],
    ["blew a gale all afternoon", ["gale"]],
    ["hard freeze tonight they say", ["frost"]],
  ])("%s", (text, wanted) => {
    expect(told(text)).toEqual(wanted);
  });

  it.each([
    "no hailstorm so far, lucky us",
    "put on a rain cap in case of a downpour",
    "cleaned the gutter before the heavy rain",
    "new storm window for the galley",
    "blew out the water lines",
    "stored the ladder under the bed",
    "the hail guard rattles",
    "patched the tank",
    "no frost tonight",
  ])("not %s", (text) => {
    expect(told(text)).toEqual([]);
  });

  it("has its day, today when none is said, and never one ahead", () => {
    expect(happeningsIn("hailstorm last night", MOMENT)).toEqual([{ what: "hail", day: "2026-06-02" }]);
    expect(happeningsIn("hailed on May 20", MOMENT)).toEqual([{ what: "hail", day: "2026-05-20" }]);
    expect(happeningsIn("first frost!", MOMENT)).toEqual([{ what: "frost", day: "2026-06-03" }]);
    expect(happeningsIn("hard freeze tomorrow", MOMENT)).toEqual([{ what: "frost", day: "2026-06-03" }]);
  });
});
