import { describe, expect, it } from "vitest";
import { play } from "../gold/play.ts";

const TURNS = [
  ["2023-04-08T10:00:00+01:00", "fitted a new trap under the sink, 9 quid"],
  ["2023-07-08T10:00:00+01:00", "new trap under the sink has held three months now, bone dry"],
  ["2024-07-13T10:00:00+01:00", "the trap under the sink let go so i put a metal trap on, 21 quid"],
  ["2024-07-14T10:00:00+01:00", "which of the sink fixes lasted the longest?"],
] as const;

describe("how long a fix lasted", () => {
  it("is until it let go, though it was looked at long before", async () => {
    const lines = await play({
      id: "lasting",
      zone: "Europe/London",
      hemisphere: "north",
      turns: TURNS.map(([at, text]) => ({ at, text })),
    });
    expect(lines.at(-1)?.replies.join("\n")).toMatch(/^1\. Sink.*, replaced with trap: 15 months\./);
  });
});
