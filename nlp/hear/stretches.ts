import { FRAME_SAMPLES, FRAMES_PER_SECOND, levelAt, loudness } from "./loudness.ts";

/** Sample positions, end exclusive. */
export type Stretch = { readonly start: number; readonly end: number };

const ABOVE_FLOOR_DB = 9;
const FAINTEST_DB = -58;
/** Speech rises and falls by more than this; steady noise does not. */
const LIVELY_DB = 6;
const PAUSE_FRAMES = 0.3 * FRAMES_PER_SECOND;
const CLICK_FRAMES = 0.08 * FRAMES_PER_SECOND;
const MARGIN_FRAMES = 0.2 * FRAMES_PER_SECOND;

type Frames = { from: number; to: number };

const loudRuns = (frames: Float32Array, threshold: number): Frames[] => {
  const runs: Frames[] = [];
  for (const [at, level] of frames.entries()) {
    if (level < threshold) continue;
    const last = runs.at(-1);
    if (last && at - last.to < PAUSE_FRAMES) last.to = at + 1;
    else runs.push({ from: at, to: at + 1 });
  }
  return runs.filter(({ from, to }) => to - from >= CLICK_FRAMES);
};

/** Where somebody may be speaking: louder than the room, in stretches parted by pauses of 0.3 s or more. */
export const spokenStretches = (samples: Float32Array): Stretch[] => {
  const frames = loudness(samples);
  const floor = levelAt(frames, 0.1);
  if (levelAt(frames, 0.98) - floor < LIVELY_DB) return [];
  return loudRuns(frames, Math.max(FAINTEST_DB, floor + ABOVE_FLOOR_DB)).map(({ from, to }) => ({
    start: Math.max(0, (from - MARGIN_FRAMES) * FRAME_SAMPLES),
    end: Math.min(samples.length, (to + MARGIN_FRAMES) * FRAME_SAMPLES),
  }));
};
