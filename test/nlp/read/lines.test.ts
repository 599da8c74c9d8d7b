import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

const told = (text: string): readonly string[] =>
  read(text, MOMENT).records.map(({ fields: { component, action, cost } }) =>
    [component, action, cost].filter((each) => each !== null).join(" "),
  );

describe("a note of several lines", () => {
  it("tells something else in each", () => {
    const lines = "roof seam resealed with lap sealant\nwindow rear still leaks\n2 new tires 210";
    expect(told(lines)).toEqual(expect.arrayContaining(["roof-seam seal", "tire replace 210"]));
    expect(told(lines)).not.toContain("window replace 210");
  });

  it("goes on where a line was only cut", () => {
    expect(told("greased the\nhubs today")).toEqual(["wheel-bearing lubricate"]);
  });
});
