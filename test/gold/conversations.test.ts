import { describe, expect, it } from "vitest";
import { play } from "./play.ts";
import { isRight } from "./scoring.ts";
import { talksIn } from "./talk.ts";

const talks = ["conversations-own.jsonl", "conversations-1.jsonl"].flatMap((file) =>
  talksIn(new URL(file, import.meta.url)),
);

/** What slips in reading a note costs its later questions too. */
const LEAST = 0.6;

describe("conversations with answers worked out by hand, through replay", () => {
  it.each(talks)("$id", async (talk) => {
    const scored = (await play(talk)).flatMap((played) =>
      played.turn.expect === undefined ? [] : [isRight(played, played.turn.expect)],
    );
    expect(scored.filter(Boolean).length / scored.length).toBeGreaterThanOrEqual(LEAST);
  });
});
