import { writeFileSync } from "node:fs";
import type { LearntLayers } from "../../../../nlp/read/layered.ts";
import type { Learnt } from "../../../../nlp/read/linear.ts";

export type LearntTables = Readonly<Record<string, Learnt | LearntLayers | readonly LearntLayers[]>>;

/** Writes the weights of some judges as JSON. */
export const writeLearnt = (file: string, learnt: LearntTables): void => {
  writeFileSync(file, `${JSON.stringify(learnt, undefined, 1)}\n`);
};
