import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { read } from "../../../nlp/read/index.ts";
import type { Hemisphere } from "../../../shared/reading.ts";

/** Notes with known records, given and our own, and the scorer that compares: ../shared/score, outside this repository. */
const GIVEN = new URL("../../../../shared/gold/", import.meta.url);
const OURS = new URL("../../gold/", import.meta.url);
const SCORER = fileURLToPath(new URL("../../../../shared/score/score.mjs", import.meta.url));

type Note = {
  readonly id: string;
  readonly text: string;
  readonly said: string;
  readonly zone: string;
  readonly hemisphere: Hemisphere;
};
type Score = Readonly<Record<string, number>>;

const scoreOf = (gold: string): Score => {
  const folder = mkdtempSync(join(tmpdir(), "read-"));
  try {
    const lines = readFileSync(gold, "utf8")
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
      execFileSync(process.execPath, [SCORER, gold, join(folder, "read.jsonl"), "--json"], {
        encoding: "utf8",
      }),
    ) as Score;
  } finally {
    rmSync(folder, { recursive: true });
  }
};

type Floor = { readonly name: string; readonly gold: URL; readonly floors: Score };
/** Given notes, learnt from. */
const LEARNT: readonly Floor[] = [
  {
    name: "dev",
    gold: new URL("dev.jsonl", GIVEN),
    floors: { recordF1: 0.92, action: 0.96, outcome: 0.9, date: 0.93, materialsF1: 0.9, whole: 0.78 },
  },
  {
    name: "dev2",
    gold: new URL("dev2.jsonl", GIVEN),
    floors: { recordF1: 0.88, action: 0.92, outcome: 0.85, date: 0.87, materialsF1: 0.75, whole: 0.6 },
  },
];
/** Notes by other hands that nothing was learnt from. */
const KEPT_OUT: readonly Floor[] = [
  {
    name: "notes-10",
    gold: new URL("notes-10.jsonl", OURS),
    floors: {
      recordF1: 0.92,
      action: 0.9,
      outcome: 0.86,
      date: 0.91,
      materialsF1: 0.9,
      usageF1: 0.9,
      whole: 0.62,
    },
  },
  {
    name: "notes-12",
    gold: new URL("notes-12.jsonl", OURS),
    floors: {
      recordF1: 0.84,
      action: 0.92,
      outcome: 0.88,
      date: 0.87,
      materialsF1: 0.88,
      usageF1: 0.75,
      whole: 0.6,
    },
  },
  {
    name: "notes-31",
    gold: new URL("notes-31.jsonl", OURS),
    floors: {
      recordF1: 0.83,
      action: 0.86,
      outcome: 0.87,
      date: 0.87,
      materialsF1: 0.86,
      usageF1: 0.75,
      whole: 0.48,
    },
  },
];

describe.skipIf(!existsSync(SCORER)).each([
  ["known notes", LEARNT],
  ["notes that nothing was learnt from", KEPT_OUT],
])("%s (left out where ../shared/score is absent)", (_, sets) => {
  it.each(sets)("$name are read at least so well", ({ gold, floors }) => {
    const score = scoreOf(fileURLToPath(gold));
    for (const [figure, floor] of Object.entries(floors))
      expect(score[figure], figure).toBeGreaterThan(floor);
  });
});
