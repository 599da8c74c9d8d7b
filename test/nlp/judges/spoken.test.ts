import { describe, expect, it } from "vitest";
import { speakingSigns } from "../../../nlp/ask/spoken-of.ts";
import speaking from "../../../nlp/judges/speaking.json" with { type: "json" };
import { spokenBy } from "../../../nlp/judges/talk.ts";

describe("what words speak of", () => {
  it("is the mean of all that was learnt", () => {
    const signs = speakingSigns("the big cloth that rolls out over the picnic table");
    const each = speaking.spoken.map((learnt) => spokenBy([learnt])(signs).get("awning") ?? 0);
    const both = spokenBy(speaking.spoken)(signs).get("awning") ?? 0;
    expect(each.length).toBeGreaterThan(1);
    expect(new Set(each).size).toBe(each.length);
    expect(both).toBeCloseTo(each.reduce((sum, one) => sum + one, 0) / each.length, 10);
  });
});
