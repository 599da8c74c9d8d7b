import { FRAME_SAMPLES, loudness } from "./loudness.ts";
import { SAMPLE_RATE } from "./sound.ts";
import { type Stretch, spokenStretches } from "./stretches.ts";

/** A pause longer than this always ends a window. */
const LONG_PAUSE_SAMPLES = 1.2 * SAMPLE_RATE;
const CUT_FROM_SHARE = 0.6;

/** Cuts a stretch that is longer than a window at its quietest moment in the last two fifths of each window. */
const cut = (samples: Float32Array, { start, end }: Stretch, longest: number): Stretch[] => {
  const parts: Stretch[] = [];
  let from = start;
  while (end - from > longest) {
    const earliest = from + Math.floor(longest * CUT_FROM_SHARE);
    const levels = loudness(samples.subarray(earliest, from + longest));
    const quietest = levels.reduce((best, level, i) => (level < (levels[best] ?? 0) ? i : best), 0);
    const at = earliest + quietest * FRAME_SAMPLES + FRAME_SAMPLES / 2;
    parts.push({ start: from, end: at });
    from = at;
  }
  parts.push({ start: from, end });
  return parts;
};

/** The windows to listen to, one after the other: whole stretches of speech, as many as fit, silence left out. */
export const listeningWindows = (samples: Float32Array, longestSeconds: number): Stretch[] => {
  const longest = Math.floor(longestSeconds * SAMPLE_RATE);
  const windows: Stretch[] = [];
  for (const part of spokenStretches(samples).flatMap((stretch) => cut(samples, stretch, longest))) {
    const last = windows.at(-1);
    const joins = last && part.start - last.end < LONG_PAUSE_SAMPLES && part.end - last.start <= longest;
    if (joins) windows[windows.length - 1] = { start: last.start, end: part.end };
    else windows.push(part);
  }
  return windows;
};
