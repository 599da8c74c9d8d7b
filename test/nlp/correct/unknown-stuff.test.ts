import { expect, it } from "vitest";
import { offersIn } from "../../../nlp/correct/offers.ts";
import { read } from "../../../nlp/read/index.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

it("takes a word that no list knows for stuff, where stuff may be named", () => {
  const fields = read("scrubbed the shower with bleach", MOMENT).records[0]?.fields;
  if (fields === undefined) throw new Error("The note tells of work.");
  const stuff = (text: string) =>
    offersIn(text, MOMENT, fields).flatMap(({ field, is }) => (field === "material" ? [is] : []));
  expect(stuff("not bleach, what I used was gribbleol")).toContain("gribbleol");
  expect(stuff("gribbleol, rather, the bleach was for the bucket")).toContain("gribbleol");
  expect(stuff("lovely evening here")).toEqual([]);
});

it("takes no turn of phrase for stuff", () => {
  const fields = read("spliced the step light with butt joiners", MOMENT).records[0]?.fields;
  if (fields === undefined) throw new Error("The note tells of work.");
  const stuff = (text: string) =>
    offersIn(text, MOMENT, fields).flatMap(({ field, is }) => (field === "material" ? [is] : []));
  expect(stuff("heatshrink was out of stock")).toEqual(["heatshrink"]);
  expect(stuff("he said it with such confidence")).not.toContain("such confidence");
});
