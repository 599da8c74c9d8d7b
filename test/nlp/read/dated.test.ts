import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import table from "./dated.json" with { type: "json" };

const MOMENT = { said: "2026-05-14T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
type Dated = { readonly text: string; readonly dates: readonly (string | null)[]; readonly gap?: boolean };

const dated = table.dated as readonly Dated[];
const datesIn = (text: string): (string | null)[] =>
  read(text, MOMENT)
    .records.filter(({ fields }) => fields.kind !== "todo")
    .map(({ fields }) => fields.date);

describe("when it was", () => {
  it.each(dated.filter(({ gap }) => gap !== true))("$text: $dates", ({ text, dates }) => {
    expect(datesIn(text)).toEqual(dates);
  });

  it.fails.each(dated.filter(({ gap }) => gap === true))("known gap: $text", ({ text, dates }) => {
    expect(datesIn(text)).toEqual(dates);
  });
});
