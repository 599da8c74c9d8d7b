import { describe, expect, it } from "vitest";
import { decodeSoundFile } from "../../../nlp/hear/decode.ts";
import { SAMPLE_RATE, type Sound } from "../../../nlp/hear/sound.ts";
import { listeningWindows } from "../../../nlp/hear/windows.ts";
import { HUMAN_RECORDINGS_THERE, humanReadings, WHY_LEFT_OUT } from "./human.ts";

const sounds = async (): Promise<{ sound: Sound; said: string }[]> => {
  const decoded = (await humanReadings()).map(async ({ path, said }) => {
    const sound = await decodeSoundFile(path);
    if (sound.tag !== "sound") throw new Error(`${path}: ${sound.tag}`);
    return { sound, said };
  });
  return Promise.all(decoded);
};

/** Debian's pocketsphinx-testdata: people, not synthetic voices. */
const TITLE = HUMAN_RECORDINGS_THERE ? "recordings of people" : `recordings of people ${WHY_LEFT_OUT}`;

describe.skipIf(!HUMAN_RECORDINGS_THERE)(TITLE, () => {
  it("decode to speech of a likely length", async () => {
    const all = await sounds();
    expect(all.length).toBeGreaterThanOrEqual(10);
    for (const { sound, said } of all) {
      const wordsASecond = said.split(" ").length / sound.seconds;
      expect(wordsASecond).toBeGreaterThan(0.8);
      expect(wordsASecond).toBeLessThan(5);
    }
  });

  it("fall into windows that hold the speech and leave silence around it", async () => {
    for (const { sound } of await sounds()) {
      const windows = listeningWindows(sound.samples, 9.7);
      const covered = windows.reduce((sum, { start, end }) => sum + end - start, 0) / sound.samples.length;
      expect(windows.length).toBeGreaterThan(0);
      expect(covered).toBeGreaterThan(0.4);
    }
  });

  it("keep one window a sentence when joined with two seconds of silence between them", async () => {
    const short = (await sounds()).filter(({ sound }) => sound.seconds < 9);
    const gap = new Float32Array(2 * SAMPLE_RATE);
    const joined = Float32Array.from(short.flatMap(({ sound }) => [...sound.samples, ...gap]));
    expect(listeningWindows(joined, 9.7).length).toBeGreaterThanOrEqual(short.length);
    const longest = Math.max(...listeningWindows(joined, 9.7).map(({ start, end }) => end - start));
    expect(longest / SAMPLE_RATE).toBeLessThanOrEqual(9.7);
  });
});
