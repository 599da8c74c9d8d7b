import { readFile } from "node:fs/promises";
import { performance } from "node:perf_hooks";
import { z } from "zod";
import { decodeSound } from "../../nlp/hear/decode.ts";
import { loadRecogniser } from "../../nlp/hear/recogniser.ts";
import { SAMPLE_RATE } from "../../nlp/hear/sound.ts";

/** One measurement in a process of its own, so that memory is its alone: a task as JSON in, figures as JSON out. */
const taskSchema = z.union([
  z.object({ decode: z.string(), times: z.number() }),
  z.object({ listen: z.string(), note: z.string() }),
]);
const task = taskSchema.parse(JSON.parse(process.argv[2] ?? ""));

const peakMegabytes = (): number => process.resourceUsage().maxRSS / 1000;
const timed = async <T>(work: () => Promise<T>): Promise<{ result: T; seconds: number }> => {
  const start = performance.now();
  const result = await work();
  return { result, seconds: (performance.now() - start) / 1000 };
};

const decoding = async (path: string, times: number): Promise<object> => {
  const one = await readFile(path);
  const bytes = Buffer.concat(Array.from({ length: times }, () => one));
  const before = peakMegabytes();
  const { result, seconds } = await timed(() => decodeSound(bytes));
  if (result.tag !== "sound") throw new Error(result.tag);
  return { sound: result.seconds, seconds, megabytes: peakMegabytes(), before };
};

const listening = async (dir: string, path: string): Promise<object> => {
  const loaded = await timed(() => loadRecogniser(dir, "en"));
  const { windowSeconds, transcribe } = loaded.result;
  const sound = await decodeSound(await readFile(path));
  if (sound.tag !== "sound") throw new Error(sound.tag);
  const window = sound.samples.slice(0, windowSeconds * SAMPLE_RATE);
  await transcribe(window, []);
  const { seconds } = await timed(() => transcribe(window, []));
  return { load: loaded.seconds, sound: window.length / SAMPLE_RATE, seconds, megabytes: peakMegabytes() };
};

const figures =
  "decode" in task ? await decoding(task.decode, task.times) : await listening(task.listen, task.note);
console.log(JSON.stringify(figures));
