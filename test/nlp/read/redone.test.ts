import { expect, it } from "vitest";
import { redone } from "../../../nlp/read/redone.ts";
import { draft } from "../../shared/memory/rig.ts";

const TODAY = "2024-10-19";
const SEALED = { component: "corner-trim", action: "seal" } as const;
const outcomes = (...told: Parameters<typeof draft>[0][]) =>
  redone(
    told.map((each) => draft(each, 80)),
    TODAY,
  ).map(({ fields }) => fields.outcome);

it("takes a fix for failed that is done over in the same note", () => {
  expect(outcomes({ ...SEALED, materials: ["butyl tape"] }, { ...SEALED, date: TODAY })).toEqual([
    "failed",
    "untested",
  ]);
  expect(outcomes({ ...SEALED, date: "2023-10" }, { ...SEALED, date: TODAY })).toEqual([
    "failed",
    "untested",
  ]);
});

it("takes none for failed that was done in the same go, elsewhere, or as care", () => {
  expect(outcomes({ ...SEALED, date: TODAY }, { ...SEALED, date: TODAY })).toEqual(["untested", "untested"]);
  expect(outcomes({ ...SEALED, where: "rear" }, { ...SEALED, where: "front", date: TODAY })).toEqual([
    "untested",
    "untested",
  ]);
  const greased = { component: "wheel-bearing", action: "lubricate" } as const;
  expect(outcomes({ ...greased, date: "2023-10" }, { ...greased, date: TODAY })).toEqual([
    "untested",
    "untested",
  ]);
});
