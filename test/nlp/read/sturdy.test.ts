import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import monologues from "./own-monologues.json" with { type: "json" };

const MOMENT = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;

describe("text that is no note", () => {
  it.each([
    ["nothing", ""],
    ["spaces", " ".repeat(100_000)],
    ["one endless word", "a".repeat(100_000)],
    ["emoji", "🔧🚐".repeat(5_000)],
    ["right to left", "שלום עולם ".repeat(3_000)],
    ["marks", "?!.,;:".repeat(10_000)],
    ["joining words", "and so ".repeat(10_000)],
    ["broken halves of characters", "\ud83d".repeat(5_000)],
  ])("%s gives no record and no error", (_, text) => {
    const started = process.cpuUsage();
    expect(read(text, MOMENT)).toEqual({ records: [], usage: [] });
    const { user } = process.cpuUsage(started);
    expect(user / 1e6).toBeLessThan(5);
  });

  it("markup is read like any words", () => {
    const { records } = read("<p>Greased the <b>tongue jack</b> today</p>", MOMENT);
    expect(records.map((draft) => draft.fields.component)).toEqual(["tongue-jack"]);
  });
});

describe("time taken", () => {
  const words = monologues
    .map(({ text }) => text)
    .join(" ")
    .split(" ");
  const ofLength = (count: number): string =>
    Array.from({ length: count }, (_, at) => words[at % words.length]).join(" ");
  let runs = 0;
  const seconds = (count: number): number => {
    const text = `${ofLength(count)} ${String(runs++)}`;
    const started = process.cpuUsage();
    read(text, MOMENT);
    return process.cpuUsage(started).user / 1e6;
  };

  it("grows no worse than with the length of the note", () => {
    seconds(2_000);
    const [short, long] = [Math.min(seconds(2_000), seconds(2_000)), seconds(16_000)];
    expect(long / short).toBeLessThan(24);
  });
});
