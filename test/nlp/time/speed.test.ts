import { describe, expect, it } from "vitest";
import { findNumbers, findTimes } from "../../../nlp/time/index.ts";
import { PHRASES } from "./phrases.ts";

const MOMENT = { said: "2026-05-14T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
const TALK = PHRASES.map(({ text }) => text).join(" and then i looked at the gray tank valve ");
const words = (count: number): string => TALK.split(" ").slice(0, count).join(" ");

const bestMillis = (run: () => unknown, rounds: number): number => {
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return Math.min(...times);
};

describe("speed", () => {
  it("a note of 60 words, a third of them times, takes under 3 ms", () => {
    const note = words(60);
    findTimes(note, MOMENT);
    expect(bestMillis(() => findTimes(note, MOMENT), 20)).toBeLessThan(3);
  });

  it("grows in line with the length", () => {
    const [short, long] = [words(1000), words(4000)];
    findTimes(long, MOMENT);
    const ratio =
      bestMillis(() => findTimes(long, MOMENT), 5) / bestMillis(() => findTimes(short, MOMENT), 5);
    expect(ratio).toBeLessThan(8);
  });

  it.each([
    "since ",
    "one ",
    "twenty ",
    "1/",
    "1-",
    "1/1 ",
    "before the ",
    "the week before ",
    "june or ",
    "from monday to ",
    "two or ",
    "a hundred and ",
    "in the ",
    "'",
    "0",
    "x",
    " ",
    "½",
  ])("4,000 times %j ends soon", (piece) => {
    const text = piece.repeat(4000);
    const start = performance.now();
    findTimes(text, MOMENT);
    findNumbers(text);
    expect(performance.now() - start).toBeLessThan(4000);
  });
});
