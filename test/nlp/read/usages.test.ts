import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import table from "./usages.json" with { type: "json" };

const SAID = "2026-05-14T18:30:00-06:00";
const cases = table.usages.map(({ text, used, zone = "America/Denver" }) => [text, used, zone] as const);

const written = (
  usage: { readonly unit: string } & ({ readonly count: number } | { readonly reading: number }),
) => `${"count" in usage ? String(usage.count) : `r${String(usage.reading)}`} ${usage.unit}`;

describe("use of the rig", () => {
  it.each(cases)("%s: %j", (text, used, zone) => {
    const { usage } = read(text, { said: SAID, zone, hemisphere: "north" });
    expect(usage.map((draft) => written(draft.usage))).toEqual(used);
  });
});
