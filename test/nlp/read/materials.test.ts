import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import materials from "./materials.json" with { type: "json" };

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("what went in or on", () => {
  it.each(materials.notes)("$text", ({ text, materials: expected }) => {
    expect(read(text, MOMENT).records.flatMap((draft) => draft.fields.materials)).toEqual(expected);
  });
});
