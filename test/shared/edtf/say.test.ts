import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { sayDate } from "../../../shared/edtf.ts";

const TODAY = Temporal.PlainDate.from("2026-05-14");

describe("a date in words", () => {
  it.each([
    ["2026-05-14", "today"],
    ["2026-05-13", "yesterday"],
    ["2026-05-15", "tomorrow"],
    ["2026-05-03", "Sun 3 May"],
    ["2025-12-03", "Wed 3 Dec"],
    ["2024-09-03", "3 Sep 2024"],
    ["2026-05-13~", "about Wed 13 May"],
    ["2025-09", "September 2025"],
    ["2025-11~", "about November 2025"],
    ["2025-11?", "perhaps November 2025"],
    ["2025-22", "summer 2025"],
    ["2025", "2025"],
    ["2024/2025", "between 2024 and 2025"],
    ["2024-06/2024-07", "June or July 2024"],
    ["2024-06~/2024-07~", "about June or July 2024"],
    ["2024-06/2024-09", "between June 2024 and September 2024"],
    ["2026-05-04/2026-05-10", "the week of 4 May"],
    ["2026-05-09/2026-05-10", "the weekend of 9 May"],
    ["2026-05-05/2026-05-06", "Tue 5 May or Wed 6 May"],
    ["2025/..", "since 2025"],
    ["../2025-09", "until September 2025"],
    ["201X", "201X"],
    ["before next trip", "before next trip"],
  ])("%s is %s", (edtf, words) => {
    expect(sayDate(edtf, TODAY)).toBe(words);
  });

  it("tells which season runs over new year", () => {
    expect(sayDate("2025-24", TODAY)).toBe("winter 2025");
    expect(sayDate("2025-24", TODAY, "north")).toBe("winter 2025/26");
    expect(sayDate("2025-24", TODAY, "south")).toBe("winter 2025");
    expect(sayDate("2025-22~", TODAY, "south")).toBe("about summer 2025/26");
  });
});
