import { describe, expect, it } from "vitest";
import { HAS_RECOGNIZERS, recognizerFigures } from "./recognizers.ts";

/**
 * Against time expressions written by others (microsoft/Recognizers-Text, MIT). Many lie outside this job
 * (quarters, decades, other calendars) or follow other conventions ("two months ago" is a day there).
 */
describe.skipIf(!HAS_RECOGNIZERS)("expressions of others (left out where ../shared/checks is absent)", () => {
  it.each([
    { kind: "date", exact: 0.62, covered: 0.68 },
    { kind: "daterange", exact: 0.4, covered: 0.5 },
  ] as const)("$kind: well beyond chrono alone", ({ kind, exact, covered }) => {
    const figures = recognizerFigures(kind);
    expect(figures.ours.exact).toBeGreaterThan(exact);
    expect(figures.ours.covered).toBeGreaterThan(covered);
    expect(figures.ours.exact).toBeGreaterThan(figures.chrono.exact + 0.1);
  });
});
