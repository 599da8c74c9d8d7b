import { describe, expect, it } from "vitest";
import { wordOnWork } from "../../../nlp/understand/word-on.ts";
import type { ComponentId } from "../../../shared/vocabulary.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("a word on work that is known", () => {
  it.each<readonly [ComponentId, string, string]>([
    ["roof-seam", "dry as a bone up there over the bunk", "holding"],
    ["furnace", "kicks on like a champ", "holding"],
    ["window", "not so much as a puddle on that sill", "holding"],
    ["slide-out", "went out about a foot and just sat there humming", "failed"],
    ["underbelly", "let go again on the first cattle grid", "failed"],
  ])("is a look at the %s, which it need not name: %s", (component, text, outcome) => {
    const word = wordOnWork(text, component, MOMENT);
    expect(word?.fields).toMatchObject({ kind: "check", component, outcome, date: "2025-06-16" });
  });

  it("rests on the words said", () => {
    const text = "dry as a bone up there over the bunk";
    const word = wordOnWork(text, "roof-seam", MOMENT);
    const spans = Object.values(word?.evidence ?? {}).flatMap((each) => each.spans);
    expect(spans.length).toBeGreaterThan(0);
    expect(spans.every(({ start, end }) => start >= 0 && end <= text.length && start < end)).toBe(true);
    expect(word?.span.end).toBeLessThanOrEqual(text.length);
  });

  it("keeps no trouble that nobody named", () => {
    expect(wordOnWork("not dead yet", "furnace", MOMENT)?.fields.fault ?? null).toBeNull();
  });

  it.each([
    "put a new one in this morning",
    "is it leaking?",
    "would be dead without it",
    "hope it keeps dry up there over the bunk",
    "no im wrong, it was the other one that had gone green",
  ])("is none that tells of work, of a wish, of a slip or of nothing: %s", (text) => {
    expect(wordOnWork(text, "water-pump", MOMENT)).toBeUndefined();
  });
});
