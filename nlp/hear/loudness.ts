import { SAMPLE_RATE } from "./sound.ts";

/** Frames a second of the loudness curve. */
export const FRAMES_PER_SECOND = 50;
export const FRAME_SAMPLES = SAMPLE_RATE / FRAMES_PER_SECOND;
const SILENT_DB = -90;

/** Level of each 20 ms in decibels below full scale, without the mean (a microphone's offset is no sound). */
export const loudness = (samples: Float32Array): Float32Array => {
  const frames = new Float32Array(Math.floor(samples.length / FRAME_SAMPLES));
  for (let frame = 0; frame < frames.length; frame++) {
    let sum = 0;
    let squares = 0;
    for (let i = frame * FRAME_SAMPLES; i < (frame + 1) * FRAME_SAMPLES; i++) {
      const value = samples[i] ?? 0;
      sum += value;
      squares += value * value;
    }
    const power = squares / FRAME_SAMPLES - (sum / FRAME_SAMPLES) ** 2;
    frames[frame] = Math.max(SILENT_DB, 10 * Math.log10(Math.max(power, 1e-12)));
  }
  return frames;
};

/** The level under which a given share of the frames lie. */
export const levelAt = (frames: Float32Array, share: number): number =>
  frames.toSorted()[Math.min(frames.length - 1, Math.floor(frames.length * share))] ?? SILENT_DB;
