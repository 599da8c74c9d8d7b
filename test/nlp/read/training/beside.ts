import { readFileSync } from "node:fs";
import type { LearntLayers } from "../../../../nlp/read/layered.ts";
import type { Learnt } from "../../../../nlp/read/linear.ts";
import { meanOf, meanOfLayers } from "./means.ts";
import { type LearntTables, writeLearnt } from "./written.ts";

/**
 * `tsx test/nlp/read/training/beside.ts FILE OTHER NAME...`: writes into FILE, of the judges named, the means of those that
 * stand in it and in OTHER, which was learnt from other notes.
 */
const [file, other, ...names] = process.argv.slice(2);

type Table = Learnt | LearntLayers;
const isLayered = (table: Table): table is LearntLayers => "inner" in table;

const between = (one: Table, another: Table): Table => {
  if (isLayered(one) && isLayered(another)) return meanOfLayers(one, another);
  if (isLayered(one) || isLayered(another))
    throw new RangeError("One has a layer between and the other none.");
  return meanOf(one, another);
};

const tablesIn = (path: string): Record<string, Table> =>
  JSON.parse(readFileSync(path, "utf8")) as Record<string, Table>;

if (file === undefined || other === undefined || names.length === 0) {
  process.stderr.write("Which file, which other one, and which judges?\n");
  process.exitCode = 2;
} else {
  const [known, beside] = [tablesIn(file), tablesIn(other)];
  const means = names.map((name) => {
    const [one, another] = [known[name], beside[name]];
    if (one === undefined || another === undefined) throw new RangeError(`No judge “${name}” in both files.`);
    return [name, between(one, another)] as const;
  });
  writeLearnt(file, { ...known, ...Object.fromEntries(means) } satisfies LearntTables);
}
