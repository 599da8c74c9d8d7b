import { readFile } from "node:fs/promises";
import { parseArgs } from "node:util";
import { writeModelFolder } from "./folder.ts";
import { modelShapeSchema } from "./shape.ts";
import { tokenTableSchema } from "./tokenizer.ts";
import { weightsOf } from "./weights.ts";

const { values } = parseArgs({
  options: {
    weights: { type: "string" },
    shape: { type: "string" },
    out: { type: "string" },
    floats: { type: "boolean", default: false },
    "float-words": { type: "boolean", default: false },
  },
});
const { weights, shape, out } = values;
if (weights === undefined || shape === undefined || out === undefined) {
  console.error(
    "Usage: tsx nlp/speech-model/build.ts --weights FILE --shape FILE --out FOLDER [--floats] [--float-words]",
  );
  process.exit(1);
}

/** Named for what it is. */
const NAME = "for trying out with synthetic voices, not for people";

const json = async (path: string | URL): Promise<unknown> =>
  JSON.parse(await readFile(path, "utf8")) as unknown;
const table = tokenTableSchema.parse(await json(new URL("tokens.json", import.meta.url)));
await writeModelFolder(
  out,
  NAME,
  {
    shape: modelShapeSchema.parse(await json(shape)),
    weights: weightsOf(await readFile(weights)),
    precision: values.floats ? "fp32" : "int8",
    words: values.floats || values["float-words"] ? "fp32" : "int8",
  },
  table,
);
