import { describe, expect, it } from "vitest";
import { withoutLoops } from "../../../nlp/hear/loops.ts";
import { SAMPLE_RATE } from "../../../nlp/hear/sound.ts";
import { spokenStretches } from "../../../nlp/hear/stretches.ts";
import { listeningWindows } from "../../../nlp/hear/windows.ts";
import { noise, tone } from "./waves.ts";

const silence = (seconds: number): Float32Array => new Float32Array(seconds * SAMPLE_RATE);
/** A tone that swells and fades four times a second, as syllables do. */
const talk = (seconds: number): Float32Array =>
  tone(220, seconds, SAMPLE_RATE).map(
    (value, i) => value * (0.55 + 0.45 * Math.sin((8 * Math.PI * i) / SAMPLE_RATE)),
  );
const joined = (...parts: Float32Array[]): Float32Array => {
  const out = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  parts.reduce((at, part) => {
    out.set(part, at);
    return at + part.length;
  }, 0);
  return out;
};
const mixed = (one: Float32Array, other: Float32Array): Float32Array =>
  one.map((value, i) => value + (other[i] ?? 0));
const seconds = (windows: readonly { start: number; end: number }[]): number[] =>
  windows.flatMap(({ start, end }) => [start / SAMPLE_RATE, end / SAMPLE_RATE]);

describe("where somebody speaks", () => {
  it("hears nothing in silence, in steady noise of any height, and in no samples", () => {
    expect(spokenStretches(silence(5))).toEqual([]);
    expect(spokenStretches(new Float32Array(0))).toEqual([]);
    for (const height of [0.001, 0.05, 0.9])
      expect(spokenStretches(noise(20, SAMPLE_RATE, height))).toEqual([]);
  });

  it("ignores a click", () => {
    expect(spokenStretches(joined(silence(3), tone(900, 0.03, SAMPLE_RATE), silence(3)))).toEqual([]);
  });

  it("finds a stretch with a margin on both sides, also over noise", () => {
    const voice = joined(silence(2), talk(3), silence(2));
    for (const sound of [voice, mixed(voice, noise(7, SAMPLE_RATE, 0.05))]) {
      const [start, end, ...more] = seconds(spokenStretches(sound));
      expect(more).toEqual([]);
      expect(start).toBeCloseTo(1.8, 0);
      expect(end).toBeCloseTo(5.2, 0);
    }
  });

  it("does not mistake a constant offset of the microphone for sound", () => {
    expect(spokenStretches(silence(5).fill(0.3))).toEqual([]);
  });
});

describe("windows for the recogniser", () => {
  it("joins what fits and leaves long silence out", () => {
    const sound = joined(talk(2), silence(0.6), talk(2), silence(6), talk(1));
    const windows = listeningWindows(sound, 9.7);
    expect(windows).toHaveLength(2);
    expect(seconds(windows)[1]).toBeLessThan(5.2);
  });

  it("covers every spoken moment once, in order, with no window too long", () => {
    const sound = joined(
      ...Array.from({ length: 12 }, (_, i) => joined(talk(1 + (i % 4) * 3), silence(0.4))),
    );
    const windows = listeningWindows(sound, 9.7);
    let last = 0;
    for (const { start, end } of windows) {
      expect(start).toBeGreaterThanOrEqual(last - 0.4 * SAMPLE_RATE);
      expect(end - start).toBeLessThanOrEqual(9.7 * SAMPLE_RATE);
      last = end;
    }
    const covered = windows.reduce((sum, { start, end }) => sum + end - start, 0) / sound.length;
    expect(covered).toBeGreaterThan(0.95);
  });

  it("cuts a stretch without pauses at its quietest moment", () => {
    const dip = joined(
      talk(8),
      talk(0.2).map((value) => value / 5),
      talk(6),
    );
    const [first] = listeningWindows(joined(dip, silence(1)), 9.7);
    expect((first?.end ?? 0) / SAMPLE_RATE).toBeCloseTo(8.1, 0);
  });
});

describe("phrases said over and over", () => {
  it("become one from four on", () => {
    expect(withoutLoops("the the the the the roof")).toBe("the roof");
    expect(withoutLoops("it leaks and it leaks and it leaks and it leaks and stops")).toBe(
      "it leaks and stops",
    );
  });
  it("stay when a person might say them", () => {
    for (const text of ["no no no the other one", "very very good", "two by two by two"])
      expect(withoutLoops(text)).toBe(text);
  });
});
