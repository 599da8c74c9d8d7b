import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { SAMPLE_MODEL } from "../../nlp/hear/find-model.ts";
import { createHearing } from "../../nlp/hear/hearing.ts";
import { CONDITIONS, conveyed, isInstalled, speak, VOICES } from "../nlp/hear/voices.ts";
import { type Pair, wordErrorRate } from "../nlp/hear/word-errors.ts";

/** Word error rate by voice and condition, through the product's own path: file, decoding, windows, recogniser, repairs. */
const { values } = parseArgs({
  options: {
    model: { type: "string", default: SAMPLE_MODEL },
    sentences: { type: "string", default: "test/nlp/hear/sentences.txt" },
    each: { type: "string", default: "20" },
    conditions: { type: "string", default: CONDITIONS.map(({ name }) => name).join() },
    show: { type: "boolean", default: false },
  },
});
const sentences = (await readFile(values.sentences, "utf8")).split("\n").filter((line) => line !== "");
const folder = await mkdtemp(join(tmpdir(), "voices-"));
const hearing = createHearing({ modelDir: values.model });
const byKind = new Map<string, Pair[]>();

for (const voice of VOICES) {
  if (!isInstalled(voice.program)) {
    console.log(`${voice.name}: left out, ${voice.program} is not installed`);
    continue;
  }
  for (const condition of CONDITIONS.filter(({ name }) => values.conditions.includes(name))) {
    const pairs: Pair[] = [];
    for (let i = 0; i < Number(values.each); i++) {
      const said = sentences[(i * 7 + VOICES.indexOf(voice) * 3) % sentences.length] ?? "";
      speak(voice, said, join(folder, "said.wav"));
      const result = await hearing.hear(await conveyed(join(folder, "said.wav"), condition, folder));
      const heard = result.tag === "heard" ? result.text : "";
      if (values.show) console.log(`  ${said}\n  ${heard}`);
      pairs.push({ said, heard });
    }
    const kind = `${voice.kind}, ${condition.name}`;
    byKind.set(kind, [...(byKind.get(kind) ?? []), ...pairs]);
    console.log(`${(100 * wordErrorRate(pairs)).toFixed(1).padStart(5)} %  ${voice.name}, ${condition.name}`);
  }
}
for (const [kind, pairs] of byKind)
  console.log(
    `${(100 * wordErrorRate(pairs)).toFixed(1).padStart(5)} %  ${kind} (${pairs.length} sentences)`,
  );
hearing.close();
await rm(folder, { recursive: true });
