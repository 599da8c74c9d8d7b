import { execFileSync, spawnSync } from "node:child_process";

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
export type Condition = { readonly name: string; readonly filter: readonly string[]; readonly file: string };
export const CONDITIONS: readonly Condition[] = [
  { name: "clean", filter: [], file: "note.wav" },
  { name: "opus 24", filter: ["-c:a", "libopus", "-b:a", "24k"], file: "note.ogg" },
  {
    name: "noise 15 dB, opus 16",
    filter: [
      "-filter_complex",
      "anoisesrc=color=pink:amplitude=0.06:seed=7[n];[0:a][n]amix=duration=first:normalize=0",
      "-c:a",
      "libopus",
      "-b:a",
      "16k",
    ],
    file: "noisy.ogg",
  },
];

export const conveyed = (wav: string, condition: Condition, folder: string): string => {
  if (condition.filter.length === 0) return wav;
  const out = `${folder}/${condition.file}`;
  execFileSync("ffmpeg", ["-loglevel", "error", "-y", "-i", wav, ...condition.filter, out]);
  return out;
};
