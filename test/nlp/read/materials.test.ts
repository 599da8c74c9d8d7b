import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import materials from "./materials.json" with { type: "json" };

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("what went in or on", () => {
  const told = (text: string) => read(text, MOMENT).records.flatMap((draft) => draft.fields.materials);
  const notes: readonly { readonly text: string; readonly materials: string[]; readonly gap?: boolean }[] =
    materials.notes;

  it.each(notes.filter(({ gap }) => gap !== true))("$text", ({ text, materials: expected }) => {
    expect(told(text)).toEqual(expected);
  });

  it.fails.each(notes.filter(({ gap }) => gap === true))(
    "known gap: $text",
    ({ text, materials: expected }) => {
      expect(told(text)).toEqual(expected);
    },
  );
});
