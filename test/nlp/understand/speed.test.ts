import { describe, expect, it } from "vitest";
import { understand } from "../../../nlp/understand/understand.ts";
import { EMPTY_SCENE } from "../../../shared/memory/scene.ts";
import type { Moment } from "../../../shared/reading.ts";

const MOMENT: Moment = { said: "2025-08-02T14:30:00-06:00", zone: "America/Denver", hemisphere: "north" };
const LIMIT_MILLIS = 250;

const processorMillis = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const pieces = [
  "a ",
  "how long did a ",
  "no no ",
  "it was not ",
  "what what ",
  "which one ",
  "the shop did ",
  "1 ",
  ", ",
  "? ",
  "is it worth ",
  "and so but ",
  "number two ",
  "((",
  "did the ",
  "when ",
  "tell me ",
  "$$ ",
  "not but ",
  "the last ",
  "and my wife asks when ",
  "it was just the a the b never ",
  "that lid is it tight ",
  "\n",
  "é ",
  "🛠 ",
];

describe("understanding odd and long input", () => {
  it.each(pieces)("ends soon on %j over and over", (piece) => {
    understand("warm up", MOMENT, EMPTY_SCENE);
    for (const length of [590, 4000]) {
      const text = piece.repeat(Math.ceil(length / piece.length)).slice(0, length);
      const start = processorMillis();
      understand(text, MOMENT, EMPTY_SCENE);
      expect(processorMillis() - start).toBeLessThan(LIMIT_MILLIS);
    }
  });
  it.each(["", " ", "?", "...", "no", "undo", "12", "👍", "\u0000"])("takes %j calmly", (text) => {
    expect(() => understand(text, MOMENT, EMPTY_SCENE)).not.toThrow();
  });
});
