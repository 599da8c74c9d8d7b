import { execFileSync, spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { decodeSoundFile } from "../../../nlp/hear/decode.ts";
import { SAMPLE_RATE } from "../../../nlp/hear/sound.ts";
import { noise, wav } from "./waves.ts";

/** How a synthetic voice is made to say a text: the program, its arguments for an output file, and whether the text is piped in. */
export type Voice = {
  readonly name: string;
  readonly kind: "known" | "kept out" | "other engine";
  readonly program: string;
  readonly args: (text: string, wav: string) => string[];
  readonly piped: boolean;
};

const espeak = (kind: Voice["kind"], voice: string, rate: number): Voice => ({
  name: `espeak-ng ${voice}`,
  kind,
  program: "espeak-ng",
  args: (text, wav) => ["-v", voice, "-s", String(rate), "-w", wav, text],
  piped: false,
});
const flite = (kind: Voice["kind"], voice: string): Voice => ({
  name: `flite ${voice}`,
  kind,
  program: "flite",
  args: (text, wav) => ["-voice", voice, "-t", text, "-o", wav],
  piped: false,
});
const festival = (voice: string): Voice => ({
  name: `festival ${voice}`,
  kind: "other engine",
  program: "text2wave",
  args: (_, wav) => ["-eval", `(voice_${voice})`, "-o", wav],
  piped: true,
});

/** The small model's training knows the first; the second were kept out of it; the third are of an engine it never met. */
export const VOICES: readonly Voice[] = [
  espeak("known", "en-us", 165),
  espeak("known", "en-gb+f2", 160),
  espeak("known", "en-gb-scotland+m3", 150),
  espeak("known", "en-029+klatt2", 165),
  flite("known", "slt"),
  flite("known", "rms"),
  flite("known", "awb"),
  flite("known", "kal16"),
  espeak("kept out", "en-gb-x-gbcwmd+f4", 160),
  espeak("kept out", "en-us+klatt3", 160),
  espeak("kept out", "en-gb+anika", 160),
  espeak("kept out", "en-us+m7", 155),
  festival("ked_diphone"),
  festival("cmu_us_slt_arctic_hts"),
];

export const isInstalled = (program: string): boolean => spawnSync("which", [program]).status === 0;

export const speak = (voice: Voice, text: string, wav: string): void => {
  execFileSync(voice.program, voice.args(text, wav), {
    input: voice.piped ? text : "",
    stdio: ["pipe", "ignore", "ignore"],
  });
};

/** What happens to a voice on its way: nothing, or what a phone and its surroundings do. */
export type Condition = {
  readonly name: string;
  readonly noiseBelowDb: number | null;
  readonly kilobits: number | null;
};
export const CONDITIONS: readonly Condition[] = [
  { name: "clean", noiseBelowDb: null, kilobits: null },
  { name: "opus 24", noiseBelowDb: null, kilobits: 24 },
  { name: "noise at 15 dB and opus 16", noiseBelowDb: 15, kilobits: 16 },
];

const power = (samples: Float32Array): number =>
  samples.reduce((sum, value) => sum + value * value, 0) / samples.length;

/** The voice with noise so far below it; louder towards low tones, as of wind and engines. */
const withNoise = (voice: Float32Array, belowDb: number): Float32Array => {
  const low = noise(voice.length / SAMPLE_RATE, SAMPLE_RATE, 1);
  for (let i = 1; i < low.length; i++) low[i] = 0.9 * (low[i - 1] ?? 0) + 0.1 * (low[i] ?? 0);
  const scale = Math.sqrt(power(voice) / power(low) / 10 ** (belowDb / 10));
  return voice.map((value, i) => 0.7 * (value + scale * (low[i] ?? 0)));
};

/** The file as it arrives. */
export const conveyed = async (
  path: string,
  { noiseBelowDb, kilobits }: Condition,
  folder: string,
): Promise<string> => {
  let file = path;
  if (noiseBelowDb !== null) {
    const sound = await decodeSoundFile(path);
    if (sound.tag !== "sound") throw new Error(`${path}: ${sound.tag}`);
    file = `${folder}/noisy.wav`;
    writeFileSync(file, wav(withNoise(sound.samples, noiseBelowDb), SAMPLE_RATE));
  }
  if (kilobits === null) return file;
  const out = `${folder}/note.ogg`;
  execFileSync("opusenc", ["--quiet", "--bitrate", String(kilobits), file, out]);
  return out;
};
