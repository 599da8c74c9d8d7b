import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import { samePlace } from "../../../nlp/read/same-place.ts";
import type { Draft } from "../../../shared/reading.ts";

const moment = {
  said: "2025-09-16T18:30:00-06:00",
  zone: "America/Denver",
  hemisphere: "north",
} as const;
const placesIn = (text: string) => read(text, moment).records.map(({ fields }) => fields.where);

const placesOf = (drafts: readonly (Draft | undefined)[]) =>
  samePlace(drafts.filter((each) => each !== undefined)).map(({ fields }) => fields.where);

describe("where a thing is", () => {
  it("stays through several goes at it, told or not", () => {
    const [taped, sealed] = [
      "taped the skylight over the bunks with foil tape and that let go in a week",
      "sealed the skylight with lap sealant",
    ].flatMap((text) => read(text, moment).records);
    expect(sealed?.fields.where).toBeNull();
    expect(placesOf([taped, sealed])).toEqual(["over the bunks", "over the bunks"]);
  });

  it("is not taken over by what is done to all of it", () => {
    const [elbow, blown] = [
      "put a brass elbow in the water line under the bathroom sink",
      "blew all the water lines out",
    ].flatMap((text) => read(text, moment).records);
    expect(blown?.fields.action).toBe("flush");
    expect(placesOf([elbow, blown])).toEqual([expect.stringContaining("bathroom"), null]);
  });

  it("is not taken over by another thing", () => {
    expect(
      placesIn("sealed the window over the couch with butyl tape. put a new anode rod in the water heater"),
    ).toEqual([expect.stringContaining("couch"), null]);
  });

  it("is told without what ties it to the thing", () => {
    expect(placesIn("new brake magnets both sides of the front axle this morning")).toEqual([
      "both sides of the front axle",
    ]);
  });

  it.each([
    ["the shower tray had a crack by the plughole so i patched it with epoxy", "by the plughole"],
    ["the jack on the gooseneck was groaning so i greased it", "gooseneck"],
  ])("is told by any noun: %s", (text, where) => {
    expect(placesIn(text)[0]).toContain(where);
  });
});
