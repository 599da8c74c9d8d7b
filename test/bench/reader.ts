import { read } from "../../nlp/read/index.ts";
import monologues from "../nlp/read/own-monologues.json" with { type: "json" };

const MOMENT = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" } as const;
const WORDS = monologues
  .map(({ text }) => text)
  .join(" ")
  .split(" ");
const ofLength = (count: number): string =>
  Array.from({ length: count }, (_, at) => WORDS[at % WORDS.length]).join(" ");

const millisOf = (text: string, runs: number): number => {
  const started = performance.now();
  for (let run = 0; run < runs; run++) read(`${text} ${String(run)}`, MOMENT);
  return (performance.now() - started) / runs;
};

/** Prints the time that reading a note takes, by its length in words, after a warm start. */
export const benchReader = (): void => {
  millisOf(ofLength(500), 20);
  for (const [count, runs] of [
    [60, 200],
    [250, 40],
    [1000, 10],
    [2000, 5],
    [4000, 3],
    [8000, 2],
  ] as const)
    console.log(`reader: ${String(count)} words in ${millisOf(ofLength(count), runs).toFixed(1)} ms`);
};
