import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { afterAll, expect, it } from "vitest";
import { z } from "zod";
import { SAMPLE_MODEL } from "../../../nlp/hear/find-model.ts";
import { createHearing } from "../../../nlp/hear/hearing.ts";
import { type Pair, wordErrorRate } from "./word-errors.ts";

const FOLDER = new URL("../../../samples/voice/", import.meta.url);
const notes = z
  .array(z.object({ file: z.string(), voice: z.string(), text: z.string() }))
  .parse(JSON.parse(await readFile(new URL("notes.json", FOLDER), "utf8")));
const hearing = createHearing({ modelDir: SAMPLE_MODEL });
afterAll(hearing.close);

/** The voices are known to the small model, the sentences are not. */
const TARGET = 0.05;

it("the small model hears the ten sample notes as they were said", async () => {
  const pairs: Pair[] = [];
  for (const { file, text } of notes) {
    const result = await hearing.hear(fileURLToPath(new URL(file, FOLDER)));
    if (result.tag !== "heard") throw new Error(`${file}: ${result.tag}`);
    pairs.push({ said: text, heard: result.text });
  }
  expect(pairs).toHaveLength(10);
  expect(wordErrorRate(pairs)).toBeLessThanOrEqual(TARGET);
}, 120_000);
