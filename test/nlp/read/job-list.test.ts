import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";

const MOMENT = { said: "2025-06-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

/** What a note tells, a record each. */
const told = (lines: readonly string[]): readonly string[] =>
  read(lines.join("\n"), MOMENT).records.map(({ fields: { kind, component, action, materials } }) =>
    [kind, component, action, ...materials].join(" "),
  );

describe("a list of jobs", () => {
  it.each<readonly [readonly string[], readonly string[]]>([
    [
      [
        "jobs for the trailer",
        "new anode rod for the heater",
        "tighten the shelf, it rattles",
        "scrub the awning",
      ],
      ["todo water-heater replace anode rod", "todo cabinet tighten", "todo awning clean"],
    ],
    [
      [
        "don't let me forget:",
        "- grease the hubs",
        "- the marker light is cracked, get another",
        "- sewer hose",
      ],
      ["todo wheel-bearing lubricate", "todo exterior-light replace", "todo sewer-hose replace"],
    ],
    [
      ["flushed the water heater today", "still to do", "1. test the brakes", "2) order a water filter"],
      ["repair water-heater flush", "todo brake test", "todo water-filter replace"],
    ],
  ])("is an intention a line: %s", (lines, records) => {
    expect(told(lines)).toEqual(records);
  });

  it("is due when its heading says so, and says where in the note each item stands", () => {
    const text = "Before we leave on Friday:\n- wash the solar panel\n- fit a new smoke alarm";
    const { records } = read(text, MOMENT);
    expect(records.map(({ fields }) => fields.due?.toLowerCase())).toEqual(
      Array(2).fill("before we leave on friday"),
    );
    expect(records.map(({ span }) => text.slice(span.start, span.end).includes("\n"))).toEqual([
      false,
      false,
    ]);
    expect(records[0]?.evidence.component?.spans.map((span) => text.slice(span.start, span.end))).toEqual([
      "solar panel",
    ]);
  });

  it.each<readonly [readonly string[], readonly string[]]>([
    [
      ["Done today:", "- greased the hubs", "- flushed the water heater"],
      ["repair wheel-bearing lubricate", "repair water-heater flush"],
    ],
    [
      ["a long list before noon", "greased the hubs", "long drive", "swans on the lake"],
      ["repair wheel-bearing lubricate"],
    ],
  ])("is none under words that say otherwise: %s", (lines, records) => {
    expect(told(lines)).toEqual(records);
  });
});
