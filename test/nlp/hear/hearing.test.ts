import { mkdtemp, readdir, stat, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { SAMPLE_MODEL } from "../../../nlp/hear/find-model.ts";
import type { HearProgress } from "../../../nlp/hear/heard.ts";
import { createHearing, type Hearing } from "../../../nlp/hear/hearing.ts";
import { littleModel } from "./little-model.ts";
import { tone, wav } from "./waves.ts";

const RATE = 16_000;
const note = fileURLToPath(new URL("files/note.ogg", import.meta.url));
let folder: string;
let model: string;
const open: Hearing[] = [];
const hearing = (limits = {}, modelDir = model): Hearing => {
  const made = createHearing({ modelDir, limits });
  open.push(made);
  return made;
};
const file = async (name: string, bytes: Uint8Array): Promise<string> => {
  await writeFile(join(folder, name), bytes);
  return join(folder, name);
};
/** Swells and fades, with a pause after each stretch, so that it is listened to. */
const murmur = (stretches: number): Uint8Array =>
  wav(
    tone(220, stretches * 4, RATE).map((value, i) =>
      i % (4 * RATE) > 3 * RATE ? 0 : value * Math.sin(i / 900) ** 2,
    ),
    RATE,
  );

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "hearing-"));
  model = await littleModel();
});
afterAll(() => {
  for (const each of open) each.close();
});

describe("hearing with a folder of random weights", () => {
  it("needs a few hundred kB", async () => {
    const names = await readdir(join(model, "onnx"));
    const sizes = await Promise.all(names.map(async (name) => (await stat(join(model, "onnx", name))).size));
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(600_000);
  });

  it("takes notes one at a time, in order, and tells how far it is", async () => {
    const { hear } = hearing();
    const path = await file("murmur.wav", murmur(6));
    const told: HearProgress[] = [];
    const ends: string[] = [];
    const first = hear(path, { onProgress: (progress) => told.push(progress) }).finally(() =>
      ends.push("first"),
    );
    const second = hear(note).finally(() => ends.push("second"));
    expect((await first).tag).toBe("heard");
    expect((await second).tag).toBe("heard");
    expect(ends).toEqual(["first", "second"]);
    expect(told.length).toBeGreaterThan(2);
    expect(told.map(({ doneSeconds }) => doneSeconds)).toEqual(
      told.map(({ doneSeconds }) => doneSeconds).toSorted((a, b) => a - b),
    );
    expect(told.at(-1)?.totalSeconds).toBeCloseTo(24, 0);
  });

  it("gives no words for silence and a reason for what is no sound", async () => {
    const { hear } = hearing();
    const silent = await hear(await file("silent.wav", wav(new Float32Array(RATE * 3), RATE)));
    expect(silent).toMatchObject({ tag: "heard", text: "", parts: [] });
    expect(await hear(await file("junk.ogg", new TextEncoder().encode("no sound at all")))).toEqual({
      tag: "not-audio",
    });
    expect(await hear(join(folder, "nothing.ogg"))).toEqual({ tag: "no-file" });
  });

  it("keeps the caller responsive while it listens", async () => {
    const { hear } = hearing();
    const work = hear(await file("long.wav", murmur(8)));
    let longest = 0;
    let last = performance.now();
    const beat = setInterval(() => {
      longest = Math.max(longest, performance.now() - last);
      last = performance.now();
    }, 10);
    await work;
    clearInterval(beat);
    expect(longest).toBeLessThan(300);
  });

  it("stops at its limits of time and memory, and hears the next note all the same", async () => {
    const slow = hearing({ startSeconds: 0.05 });
    expect(await slow.hear(note)).toMatchObject({ tag: "timed-out" });
    const tight = hearing({ megabytes: 1 });
    expect(await tight.hear(note)).toMatchObject({ tag: "out-of-memory" });
    expect(await tight.hear(join(folder, "nothing.ogg"))).toEqual({ tag: "no-file" });
  });

  it("says so when it is closed", async () => {
    const { hear, close } = hearing();
    const work = hear(note);
    close();
    expect(await work).toEqual({ tag: "closed" });
    expect(await hear(note)).toEqual({ tag: "closed" });
  });

  it("says what is wrong with a model that does not load", async () => {
    const broken = await littleModel();
    await truncate(join(broken, "onnx", "encoder_model_quantized.onnx"), 1000);
    expect(await hearing({}, broken).hear(note)).toMatchObject({ tag: "no-model" });
  });
});

describe("hearing with the small model", () => {
  it("hears a note of a voice that it knows", async () => {
    const result = await hearing({}, SAMPLE_MODEL).hear(note);
    expect(result).toMatchObject({
      tag: "heard",
      text: expect.stringMatching(/gr[ae]y tank is bone dry/) as unknown,
    });
  });
});
