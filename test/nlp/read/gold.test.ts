import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import type { Hemisphere } from "../../../shared/reading.ts";

/** Notes with known records and the scorer that compares: ../shared/gold and ../shared/score, outside this repository. */
const GOLD = fileURLToPath(new URL("../../../../shared/gold/", import.meta.url));
const SCORER = fileURLToPath(new URL("../../../../shared/score/score.mjs", import.meta.url));

type Note = {
  readonly id: string;
  readonly text: string;
  readonly said: string;
  readonly zone: string;
  readonly hemisphere: Hemisphere;
};
type Score = Readonly<Record<string, number>>;

const scoreOf = (file: string): Score => {
  const folder = mkdtempSync(join(tmpdir(), "read-"));
  try {
    const lines = readFileSync(join(GOLD, file), "utf8")
      .split("\n")
      .filter(Boolean)
      .map((line) => {
        const note = JSON.parse(line) as Note;
        const { records, usage } = read(note.text, note);
        return JSON.stringify({
          id: note.id,
          records: records.map((draft) => draft.fields),
          usage: usage.map((draft) => draft.usage),
        });
      });
    writeFileSync(join(folder, "read.jsonl"), lines.join("\n"));
    return JSON.parse(
      execFileSync(process.execPath, [SCORER, join(GOLD, file), join(folder, "read.jsonl"), "--json"], {
        encoding: "utf8",
      }),
    ) as Score;
  } finally {
    rmSync(folder, { recursive: true });
  }
};

const FLOORS: Readonly<Record<string, Score>> = {
  "dev.jsonl": { recordF1: 0.92, action: 0.96, outcome: 0.9, date: 0.93, materialsF1: 0.9, whole: 0.78 },
  "dev2.jsonl": { recordF1: 0.82, action: 0.9, outcome: 0.8, date: 0.87, materialsF1: 0.75, whole: 0.52 },
};

describe.skipIf(!existsSync(SCORER))("known notes (left out where ../shared/score is absent)", () => {
  it.each(Object.entries(FLOORS))("%s is read at least so well", (file, floors) => {
    const score = scoreOf(file);
    for (const [figure, floor] of Object.entries(floors))
      expect(score[figure], figure).toBeGreaterThan(floor);
  });
});
