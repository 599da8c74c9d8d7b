import { access } from "node:fs/promises";
import type { Listened } from "./child-messages.ts";
import { decodeSoundFile } from "./decode.ts";
import type { HeardPart, HearProgress } from "./heard.ts";
import type { Recogniser } from "./recogniser.ts";
import { SAMPLE_RATE } from "./sound.ts";
import { listeningWindows } from "./windows.ts";

/** Windows are kept a little shorter than the model's, so that the last word is not cut. */
const SPARE_SECONDS = 0.3;

const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

/** Listens to a whole note, window by window, and tells how far it is. */
export const listen = async (
  recogniser: Recogniser,
  path: string,
  words: readonly string[],
  tell: (progress: HearProgress) => void,
): Promise<Listened> => {
  if (!(await isThere(path))) return { tag: "no-file" };
  const sound = await decodeSoundFile(path);
  if (sound.tag !== "sound") return sound;
  const { samples, seconds } = sound;
  const parts: HeardPart[] = [];
  tell({ doneSeconds: 0, totalSeconds: seconds });
  for (const { start, end } of listeningWindows(samples, recogniser.windowSeconds - SPARE_SECONDS)) {
    const text = await recogniser.transcribe(samples.slice(start, end), words);
    if (text !== "") parts.push({ startSeconds: start / SAMPLE_RATE, endSeconds: end / SAMPLE_RATE, text });
    tell({ doneSeconds: end / SAMPLE_RATE, totalSeconds: seconds });
  }
  return { tag: "listened", parts, seconds };
};
