import { describe, expect, it } from "vitest";
import { findNumbers, findTimes } from "../../../nlp/time/index.ts";
import { PHRASES } from "./phrases.ts";

const MOMENT = { said: "2026-05-14T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
const TALK = PHRASES.map(({ text }) => text).join(" and then i looked at the gray tank valve ");
const words = (count: number): string => TALK.split(" ").slice(0, count).join(" ");

/** Time of the processor, so that a busy machine does not count. */
const millisOf = (run: () => unknown, rounds = 1): number => {
  const start = process.cpuUsage();
  for (let i = 0; i < rounds; i++) run();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000 / rounds;
};

describe("speed", () => {
  it("grows in line with the length", () => {
    const [short, long] = [words(1000), words(4000)];
    findTimes(long, MOMENT);
    const ratio = millisOf(() => findTimes(long, MOMENT), 5) / millisOf(() => findTimes(short, MOMENT), 5);
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
  ])("1,000 times %j ends soon", (piece) => {
    const text = piece.repeat(1000);
    expect(millisOf(() => [findTimes(text, MOMENT), findNumbers(text)])).toBeLessThan(1500);
  });
});
