import { describe, expect, it } from "vitest";
import { correct } from "../../../nlp/correct/correct.ts";
import { offersIn } from "../../../nlp/correct/offers.ts";
import { read } from "../../../nlp/read/index.ts";
import type { Moment } from "../../../shared/reading.ts";

const NOW: Moment = { said: "2025-06-02T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
const [welded] = read("my brother welded a crack in the frame last summer", NOW).records;

const costsIn = (text: string): readonly string[] =>
  welded === undefined
    ? []
    : offersIn(text, NOW, welded.fields).flatMap(({ field, is }) => (field === "cost" ? [is] : []));

describe("sums that a message names", () => {
  it("are no year, said in words", () => {
    expect(costsIn("no it was the summer before that twenty twenty three")).toEqual([]);
  });
  it("are numbers without a unit as well", () => {
    expect(costsIn("no the welder was a hundred and seventy")).toContain("170");
  });
});

describe("a spoken sum that may be in cents", () => {
  const of = (cost: number | null): readonly string[] =>
    welded === undefined
      ? []
      : offersIn("he only took one twenty for it", NOW, { ...welded.fields, cost }).flatMap(
          ({ field, is }) => (field === "cost" ? [is] : []),
        );

  it("is what comes near the sum on record", () => {
    expect(of(140)).not.toContain("1.2");
    expect(of(1.4)).toContain("1.2");
  });
  it("is either where none is on record", () => {
    expect(of(null)).toEqual(expect.arrayContaining(["120", "1.2"]));
  });
});

describe("a place put right", () => {
  const placesIn = (text: string): readonly string[] =>
    welded === undefined
      ? []
      : offersIn(text, NOW, { ...welded.fields, component: "corner-trim", where: "roadside rear" }).flatMap(
          ({ field, is }) => (field === "where" ? [is] : []),
        );

  it("is one, however many words say it, and not the thing itself", () => {
    expect(placesIn("make that curbside rear on the trim")).toEqual(["curbside rear"]);
  });
  it("is none where someone does something", () => {
    const said = correct("no the gas man was one hundred and he gave us the twenty back", NOW);
    expect(JSON.stringify(said?.correction.changes ?? [])).not.toContain("where");
  });
});

describe("a thing put right", () => {
  it("is none that a tin is called by", () => {
    const [greased] = read("greased the steadies with copper grease", NOW).records;
    const offers = greased === undefined ? [] : offersIn("it was the black tin", NOW, greased.fields);
    expect(offers.map(({ field }) => field)).not.toContain("component");
  });
});

it("offers no battery charged where money is", () => {
  if (welded === undefined) throw new Error("The note tells of work.");
  const works = (text: string) =>
    offersIn(text, NOW, welded.fields).flatMap(({ field, is }) => (field === "action" ? [is] : []));
  expect(works("no, he charged $64 for it")).not.toContain("charge");
  expect(works("no, he charged the battery")).toContain("charge");
});

describe("a loose name", () => {
  const thingsIn = (text: string, component: "smoke-alarm" | "slide-seal" | "furnace"): readonly string[] =>
    welded === undefined
      ? []
      : offersIn(text, NOW, { ...welded.fields, component }).flatMap(({ field, is }) =>
          field === "component" ? [is] : [],
        );

  it("is what is akin to the thing on record, of all that it may stand for", () => {
    expect(thingsIn("nope, the gas one", "smoke-alarm")).toEqual(["gas-alarm"]);
    expect(thingsIn("it was the rails", "slide-seal")).toEqual(["slide-out"]);
  });
  it("is the thing on record where it may be that", () => {
    expect(thingsIn("nope, the gas one", "furnace")).toEqual(["furnace"]);
  });
});

describe("a place that is denied", () => {
  it("is none", () => {
    const said = welded === undefined ? [] : offersIn("it is nowhere near the axle", NOW, welded.fields);
    expect(said.filter(({ field }) => field === "where")).toEqual([]);
  });
});
