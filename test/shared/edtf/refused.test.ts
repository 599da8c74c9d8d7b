import { describe, expect, it } from "vitest";
import { daySpan, parseEdtf } from "../../../shared/edtf.ts";

const reasonOf = (text: string): string => {
  const parsed = parseEdtf(text);
  return parsed.ok ? "read" : parsed.reason;
};

describe("what is no date", () => {
  it.each([
    "",
    "/",
    "../..",
    "before next trip",
    "20240503",
    "2024-5-3",
    "24-05-03",
    "2024/05/03",
    "2024-05-03 10:00",
    "2024-05-03T10",
    "[2024",
    "2024,2025",
    "[..]",
    "12",
  ])("%s", (text) => {
    expect(reasonOf(text)).toBe("not EDTF");
    expect(daySpan(text, "north")).toBeUndefined();
  });

  it.each(["2023-02-29", "2024-04-31", "2024-01-00", "2024-22-03", "1900-02-29"])("%s is no day", (text) => {
    expect(reasonOf(text)).toBe("no such day");
  });

  it.each(["2024-13", "2024-00", "2024-20", "2024-42", "2024-99"])("%s is no part of a year", (text) => {
    expect(reasonOf(text)).toBe("no such part of a year");
  });

  it.each(["2024-02-29", "2000-02-29", "202X-02-29"])("%s is a day", (text) => {
    expect(reasonOf(text)).toBe("read");
  });

  it("gives no span to what is open on one side", () => {
    expect(daySpan("2024/..", "north")).toBeUndefined();
  });

  it.each([`${"2024-".repeat(20_000)}X`, `[${"1..".repeat(20_000)}]`])("a long text is refused", (text) => {
    expect(reasonOf(text)).not.toBe("read");
  });
});
