import { execFileSync, spawnSync } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import { SAMPLE_MODEL } from "../../nlp/hear/find-model.ts";
import { writeModelFolder } from "../../nlp/speech-model/folder.ts";
import type { ModelShape } from "../../nlp/speech-model/shape.ts";
import { tokenTableSchema } from "../../nlp/speech-model/tokenizer.ts";
import { randomWeights } from "../../nlp/speech-model/weights.ts";

/** Shapes as published (Radford et al. 2022, table 1); random weights do for speed and memory, and say nothing of accuracy. */
const PUBLISHED: Readonly<Record<string, ModelShape>> = {
  tiny: {
    width: 384,
    heads: 6,
    encoder_layers: 4,
    decoder_layers: 4,
    mels: 80,
    frames: 1500,
    context: 448,
    vocabulary: 51_864,
  },
  base: {
    width: 512,
    heads: 8,
    encoder_layers: 6,
    decoder_layers: 6,
    mels: 80,
    frames: 1500,
    context: 448,
    vocabulary: 51_864,
  },
};
const NOTE = fileURLToPath(new URL("../../samples/voice/long-walk.ogg", import.meta.url));
const ONCE = fileURLToPath(new URL("hear-once.ts", import.meta.url));
const HALF_AN_HOUR = 111;

const figuresSchema = z.object({
  sound: z.number(),
  seconds: z.number(),
  megabytes: z.number(),
  load: z.number().optional(),
});
type Figures = z.infer<typeof figuresSchema>;

const canPin = spawnSync("which", ["taskset"]).status === 0;
const measure = (task: object, threads: 1 | 2): Figures => {
  const cores = canPin ? ["taskset", "-c", threads === 1 ? "0" : "0,1"] : [];
  const [program, ...args] = [...cores, process.execPath, "--import", "tsx", ONCE, JSON.stringify(task)];
  const lines = execFileSync(program, args, { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] })
    .trim()
    .split("\n");
  return figuresSchema.parse(JSON.parse(lines.at(-1) ?? ""));
};

const row = (what: string, threads: number, { sound, seconds, megabytes, load }: Figures): object => ({
  what,
  threads,
  "sound s": sound.toFixed(0),
  "time s": seconds.toFixed(2),
  "times real time": (sound / seconds).toFixed(1),
  "real-time factor": (seconds / sound).toFixed(3),
  "peak MB": megabytes.toFixed(0),
  "load s": load?.toFixed(1) ?? "",
});

/** A published shape with random weights: as many steps as it likes, up to the most a window allows. */
const published = async (folder: string, name: string, shape: ModelShape): Promise<string> => {
  const file = new URL("../../nlp/speech-model/tokens.json", import.meta.url);
  const table = tokenTableSchema.parse(JSON.parse(await readFile(file, "utf8")));
  const dir = join(folder, name);
  const parts = { shape, weights: randomWeights(1), precision: "int8", words: "int8" } as const;
  await writeModelFolder(dir, `random ${name}`, parts, table);
  return dir;
};

export const benchHear = async (): Promise<void> => {
  const folder = await mkdtemp(join(tmpdir(), "bench-hear-"));
  const models = { sample: SAMPLE_MODEL } as Record<string, string>;
  for (const [name, shape] of Object.entries(PUBLISHED)) models[name] = await published(folder, name, shape);
  const threads = canPin ? ([1, 2] as const) : ([2] as const);
  const rows = threads.flatMap((count) => [
    row("decoding half an hour of Opus", count, measure({ decode: NOTE, times: HALF_AN_HOUR }, count)),
    ...Object.entries(models).map(([name, dir]) =>
      row(`listening, ${name}`, count, measure({ listen: dir, note: NOTE }, count)),
    ),
  ]);
  console.log(
    "Voice: decoding, and one window through the recogniser (tiny and base: published shapes, random weights):",
  );
  console.table(rows);
  await rm(folder, { recursive: true });
};
