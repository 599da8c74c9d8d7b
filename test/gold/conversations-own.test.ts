import { describe, expect, it } from "vitest";
import { linesOf } from "../nlp/lines.ts";
import { Conversation } from "./conversation.ts";
import { isRight, type Talk } from "./scoring.ts";

const talks = linesOf(new URL("conversations-own.jsonl", import.meta.url)).map(
  (line) => JSON.parse(line) as Talk,
);

/** What slips in reading a note costs its later questions too. */
const LEAST = 0.9;

describe("conversations with answers worked out by hand", () => {
  it.each(talks)("$id", (talk) => {
    const conversation = new Conversation(talk.zone, talk.hemisphere);
    const scored = talk.turns.flatMap((turn) => {
      const result = conversation.turn(turn.at, turn.text);
      return turn.expect === undefined ? [] : [isRight(result, turn.expect)];
    });
    expect(scored.filter(Boolean).length / scored.length).toBeGreaterThanOrEqual(LEAST);
  });
});
