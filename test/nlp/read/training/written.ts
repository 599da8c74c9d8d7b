import { writeFileSync } from "node:fs";
import type { LearntLayers } from "../../../../nlp/read/layered.ts";
import type { Learnt } from "../../../../nlp/read/linear.ts";

/** Writes the weights of some judges as JSON. */
export const writeLearnt = (
  file: string,
  learnt: Readonly<Record<string, Learnt | LearntLayers | readonly LearntLayers[]>>,
): void => {
  writeFileSync(file, `${JSON.stringify(learnt, undefined, 1)}\n`);
};
