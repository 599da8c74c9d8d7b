import { fetchModel } from "../nlp/hear/fetch-model.ts";
import { HUB, HUB_MODELS, type HubModel } from "../nlp/hear/hub.ts";
import { configFrom } from "./config.ts";
import { optionsOf } from "./options.ts";
import { modelPlaces } from "./workers/ear.ts";

/** `npm run model [-- base]`: fetches a speech model once, so that voice notes can be heard without a network. */
const USAGE = `Say which one: ${Object.entries(HUB_MODELS)
  .map(([name, { megabytes }]) => `${name} (${megabytes} MB)`)
  .join(", ")}. Example: npm run model -- base`;

const BAR = 30;
const bar = (share: number): string => {
  const full = Math.round(share * BAR);
  return `[${"=".repeat(full)}${" ".repeat(BAR - full)}] ${Math.floor(share * 100)} %`;
};

const isModel = (name: string): name is HubModel => name in HUB_MODELS;

const fail = (sentence: string): never => {
  console.error(sentence);
  process.exit(1);
};

const { values, positionals } = optionsOf(
  { options: { host: { type: "string", default: HUB } }, allowPositionals: true },
  USAGE,
);
const name = positionals[0] ?? "base";
const config = configFrom(process.env);

const fetchNamed = async (model: HubModel, home: string): Promise<void> => {
  let shown = "";
  const dir = await fetchModel({
    model,
    host: values.host,
    into: modelPlaces(home, null, false).fetched,
    onProgress: ({ doneBytes, totalBytes }) => {
      const line = bar(doneBytes / totalBytes);
      if (line !== shown) process.stdout.write(`\r${line}`);
      shown = line;
    },
  });
  process.stdout.write("\n");
  console.log(`The ${model} model is in ${dir}. Voice notes that wait are heard as soon as Holdfast runs.`);
};

if (!config.ok) fail(config.problem);
else if (!isModel(name)) fail(`There is no model “${name}”. ${USAGE}`);
else
  await fetchNamed(name, config.config.home).catch((error: unknown) =>
    fail(
      `\nThe model did not come: ${error instanceof Error ? error.message : "an unknown fault"} Run it again; it goes on where it ended.`,
    ),
  );
