import { readFileSync } from "node:fs";
import type { RecordFields } from "../../shared/record.ts";

/** What a careful keeper would make of a turn, in the form of the gold conversations. */
export type Expected = Partial<Record<keyof RecordFields, unknown>> & {
  readonly components?: readonly string[];
  readonly count?: number;
  readonly verdict?: "yes" | "no";
};
export type Expectation = {
  readonly records?: number;
  readonly fixed?: Expected;
  readonly removed?: true;
  readonly answer?: Expected;
};
export type Turn = {
  readonly at: string;
  readonly text: string;
  readonly expect?: Expectation;
  /** What a question asks for, where somebody wrote it down. */
  readonly ask?: string;
  /** What it counts, where that is not how often fixes gave out. */
  readonly of?: "work";
};

export type Talk = {
  readonly id: string;
  readonly zone: string;
  readonly hemisphere: "north" | "south";
  readonly turns: readonly Turn[];
};

/** The conversations of a JSON Lines file. */
export const talksIn = (file: string | URL): readonly Talk[] =>
  readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line.trim() !== "")
    .map((line) => JSON.parse(line) as Talk);
