import { spawn } from "node:child_process";
import { type Decoded, SAMPLE_RATE, type SoundKind, type SoundLimits, soundOf, tooLong } from "./sound.ts";

const TIME_LIMIT_MS = 120_000;

const asked = (path: string, limits: SoundLimits): readonly string[] => [
  ...["-nostdin", "-loglevel", "error", "-i", `file:${path}`, "-vn"],
  ...[
    "-t",
    String(limits.maxMinutes * 60 + 1),
    "-ac",
    "1",
    "-ar",
    String(SAMPLE_RATE),
    "-f",
    "f32le",
    "pipe:1",
  ],
];

const samplesOf = (parts: readonly Buffer[]): Float32Array => {
  const all = Buffer.concat(parts);
  const samples = new Float32Array(Math.floor(all.length / 4));
  for (let i = 0; i < samples.length; i++) samples[i] = all.readFloatLE(i * 4);
  return samples;
};

/** A file that we cannot decode ourselves (AAC, Vorbis, AMR), through `ffmpeg` where the machine has one. */
export const decodeElsewhere = (path: string, kind: SoundKind, limits: SoundLimits): Decoded =>
  new Promise((resolve) => {
    const child = spawn("ffmpeg", asked(path, limits), {
      stdio: ["ignore", "pipe", "ignore"],
      timeout: TIME_LIMIT_MS,
    });
    const parts: Buffer[] = [];
    child.stdout.on("data", (part: Buffer) => parts.push(part));
    child.on("error", () => resolve({ tag: "unsupported", kind }));
    child.on("close", (code) => {
      const store = samplesOf(parts);
      const failed = code !== 0 || store.length === 0;
      resolve(failed ? { tag: "damaged" } : (tooLong(store.length / SAMPLE_RATE, limits) ?? soundOf(store)));
    });
  });
