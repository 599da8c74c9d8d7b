import { describe, expect, it } from "vitest";
import { findTimes } from "../../../nlp/time/index.ts";
import { PHRASES, written } from "./phrases.ts";

const FILES = [...new Set(PHRASES.map(({ file }) => file))];

describe.each(FILES)("%s", (file) => {
  it.each(PHRASES.filter((phrase) => phrase.file === file))("$text", ({ text, want, moment, options }) => {
    const found = findTimes(text, moment, options);
    expect(found.map(written).join("; ")).toBe(want);
  });
});
