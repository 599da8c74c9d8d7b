import { SAMPLE_MODEL } from "../../nlp/hear/find-model.ts";
import { createHearing } from "../../nlp/hear/hearing.ts";
import { HUMAN_RECORDINGS_THERE, humanReadings, pocketsphinx, WHY_LEFT_OUT } from "../nlp/hear/human.ts";
import { isInstalled } from "../nlp/hear/voices.ts";
import { type Pair, wordErrorRate } from "../nlp/hear/word-errors.ts";

/** Word error rates on recordings of people: a model through the product's own path, and the reference recogniser. */
const percent = (pairs: readonly Pair[]): string => `${(100 * wordErrorRate(pairs)).toFixed(0)} %`;

export const benchPeople = async (modelDir: string = process.argv[2] ?? SAMPLE_MODEL): Promise<void> => {
  if (!HUMAN_RECORDINGS_THERE) {
    console.log(`Recordings of people ${WHY_LEFT_OUT}.`);
    return;
  }
  const hearing = createHearing({ modelDir });
  const rows = new Map<string, { ours: Pair[]; reference: Pair[] }>();
  for (const { set, path, said } of await humanReadings()) {
    const result = await hearing.hear(path);
    const row = rows.get(set) ?? { ours: [], reference: [] };
    row.ours.push({ said, heard: result.tag === "heard" ? result.text : "" });
    if (isInstalled("pocketsphinx_continuous")) row.reference.push({ said, heard: pocketsphinx(path) });
    rows.set(set, row);
  }
  hearing.close();
  console.log("Recordings of people, word error rate:");
  console.table(
    Array.from(rows, ([set, { ours, reference }]) => ({
      set,
      sentences: ours.length,
      model: percent(ours),
      pocketsphinx: reference.length > 0 ? percent(reference) : "not installed",
    })),
  );
};

await benchPeople();
