import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { understand } from "../../nlp/understand/understand.ts";
import { EMPTY_SCENE } from "../../shared/memory/scene.ts";
import type { Moment } from "../../shared/reading.ts";
import { afterwardsIn, playAfterwards } from "./corrections.ts";

const here = (name: string): string => new URL(name, import.meta.url).pathname;
const MOMENT: Moment = { said: "2025-09-16T18:30:00-06:00", zone: "America/Denver", hemisphere: "north" };

type Line = { readonly text: string; readonly ask: string };

const questions = readFileSync(here("questions-12.jsonl"), "utf8")
  .split("\n")
  .filter((line) => line !== "")
  .map((line) => JSON.parse(line) as Line);

const kindOf = (text: string): string => {
  const intent = understand(text, MOMENT, EMPTY_SCENE);
  return intent.is === "ask" ? intent.query.ask : intent.is;
};

const share = (right: readonly boolean[]): number => right.filter(Boolean).length / right.length;

/** What is measured on lines that nothing was learnt from; a fall below says that something broke. */
describe("talk that was never learnt from", () => {
  it("is known for questions of their kind", () => {
    expect(share(questions.map(({ text, ask }) => kindOf(text) === ask))).toBeGreaterThanOrEqual(0.62);
  });

  it("puts right what it is meant to put right", async () => {
    const lines = afterwardsIn(here("corrections-12.jsonl")).filter(({ is }) => is === "correction");
    const right: boolean[] = [];
    for (const line of lines.slice(0, 60)) right.push((await playAfterwards(line)).right);
    expect(share(right)).toBeGreaterThanOrEqual(0.66);
  }, 60_000);
});
