import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import table from "./dated.json" with { type: "json" };

const MOMENT = { said: "2026-05-14T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
const cases = table.dated.map(({ text, dates }) => [text, dates] as const);

describe("when it was", () => {
  it.each(cases)("%s: %j", (text, dates) => {
    const records = read(text, MOMENT).records.filter(({ fields }) => fields.kind !== "todo");
    expect(records.map(({ fields }) => fields.date)).toEqual(dates);
  });
});
