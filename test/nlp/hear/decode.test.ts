import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { decodeSound, probeSound } from "../../../nlp/hear/decode.ts";
import { SAMPLE_RATE, type Sound, type SoundFailure } from "../../../nlp/hear/sound.ts";
import { tone, wav } from "./waves.ts";

const file = (name: string): Promise<Uint8Array> => readFile(new URL(`files/${name}`, import.meta.url));
const sound = (result: Sound | SoundFailure): Sound => {
  if (result.tag !== "sound") throw new Error(`Expected sound, got ${result.tag}.`);
  return result;
};
/** Zero crossings a second, halved: the pitch of a pure tone. */
const pitch = ({ samples, seconds }: Sound): number =>
  samples.reduce((n, value, i) => n + (value >= 0 !== (samples[i - 1] ?? 0) >= 0 ? 1 : 0), 0) / 2 / seconds;

describe("decoding what phones and browsers send", () => {
  const spoken = 1.9;
  it.each(["note.ogg", "note.webm", "note.mp3"])(
    "%s gives mono samples of the right length",
    async (name) => {
      const { samples, seconds } = sound(await decodeSound(await file(name)));
      expect(seconds).toBeGreaterThan(spoken - 0.2);
      expect(seconds).toBeLessThan(spoken + 0.2);
      expect(samples.length).toBe(Math.round(seconds * SAMPLE_RATE));
      expect(Math.max(...samples.map(Math.abs))).toBeGreaterThan(0.3);
    },
  );

  it("adds up streams that stand one behind the other", async () => {
    const one = await file("note.ogg");
    const once = sound(await decodeSound(one)).seconds;
    const three = Buffer.concat([one, one, one]);
    expect(await probeSound(three)).toMatchObject({
      tag: "header",
      seconds: expect.closeTo(3 * once, 1) as unknown,
    });
    expect(sound(await decodeSound(three)).seconds).toBeCloseTo(3 * once, 1);
  });

  it("gives the same sound through every container", async () => {
    const energy = async (name: string): Promise<number> => {
      const { samples } = sound(await decodeSound(await file(name)));
      return Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);
    };
    const [ogg, webm, mp3] = await Promise.all(["note.ogg", "note.webm", "note.mp3"].map(energy));
    expect((webm ?? 0) / (ogg ?? 0)).toBeCloseTo(1, 1);
    expect((mp3 ?? 0) / (ogg ?? 0)).toBeCloseTo(1, 1);
  });

  it.each([8000, 16_000, 22_050, 44_100, 48_000])(
    "keeps the pitch of a WAV at %i samples a second",
    async (rate) => {
      const heard = sound(await decodeSound(wav(tone(440, 1, rate), rate)));
      expect(heard.seconds).toBeCloseTo(1, 1);
      expect(pitch(heard)).toBeGreaterThan(430);
      expect(pitch(heard)).toBeLessThan(450);
    },
  );

  it("mixes two channels into one", async () => {
    const left = tone(440, 1, 16_000);
    const both = Float32Array.from({ length: left.length * 2 }, (_, i) =>
      i % 2 === 0 ? (left[i / 2] ?? 0) : 0,
    );
    const { samples } = sound(await decodeSound(wav(both, 16_000, 2)));
    expect(samples.length).toBe(left.length);
    expect(Math.max(...samples)).toBeCloseTo(0.25, 2);
  });
});

describe("what gives no sound says why", () => {
  it("knows an empty file, noise and text", async () => {
    expect(await decodeSound(new Uint8Array())).toEqual({ tag: "empty" });
    const junk = Uint8Array.from({ length: 5000 }, (_, i) => (i * 7919 + 13) % 251);
    expect(await decodeSound(junk)).toEqual({ tag: "not-audio" });
    expect(await decodeSound(new TextEncoder().encode("just words, no sound"))).toEqual({ tag: "not-audio" });
  });

  it("finds an Ogg file cut anywhere", async () => {
    const whole = await file("note.ogg");
    for (const share of [0.1, 0.5, 0.9, 0.99]) {
      const part = await decodeSound(whole.subarray(0, Math.floor(whole.length * share)));
      expect(part.tag).toBe("truncated");
    }
  });

  it("finds a WAV shorter than its header says", async () => {
    const whole = wav(tone(440, 2, 16_000), 16_000);
    expect(await decodeSound(whole.subarray(0, 40_000))).toMatchObject({ tag: "truncated" });
  });

  it("never throws on a file with flipped bytes", async () => {
    const tags = new Set(["sound", "truncated", "damaged", "empty", "not-audio", "unsupported", "too-long"]);
    for (const name of ["note.ogg", "note.webm", "note.mp3", "note.m4a", "vorbis.ogg"]) {
      const whole = await file(name);
      for (let step = 3; step < 60; step += 19) {
        const flipped = Uint8Array.from(whole, (byte, i) => (i > 64 && i % step === 0 ? byte ^ 0x5a : byte));
        expect(tags).toContain((await decodeSound(flipped)).tag);
      }
    }
  });

  it("names what it cannot decode itself", async () => {
    expect(await decodeSound(await file("note.m4a"))).toEqual({ tag: "unsupported", kind: "mp4" });
    expect(await decodeSound(await file("vorbis.ogg"))).toEqual({ tag: "unsupported", kind: "ogg" });
  });

  it("keeps the limits before any work", async () => {
    const long = wav(new Float32Array(8000 * 61), 8000);
    expect(await probeSound(long, { maxMinutes: 1, maxMegabytes: 20 })).toMatchObject({ tag: "too-long" });
    expect(await probeSound(long, { maxMinutes: 30, maxMegabytes: 0.5 })).toMatchObject({ tag: "too-large" });
    expect(await probeSound(long)).toEqual({ tag: "header", kind: "wav", seconds: 61 });
  });
});
