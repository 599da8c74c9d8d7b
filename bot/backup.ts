import { join, resolve } from "node:path";
import { Temporal } from "temporal-polyfill";
import { backUp, restore } from "../store/backup.ts";
import { asStoreProblem } from "../store/problem.ts";
import { configFrom } from "./config.ts";
import { optionsOf } from "./options.ts";

const stamp = (): string =>
  Temporal.Now.plainDateTimeISO().toString({ smallestUnit: "second" }).replaceAll(":", "");

const { values, positionals } = optionsOf(
  { options: { restore: { type: "boolean", default: false } }, allowPositionals: true },
  "To back up: npm run backup. To go back: npm run restore -- FOLDER",
);

const run = async (home: string): Promise<string> => {
  const [named] = positionals;
  if (!values.restore) {
    const folder = named === undefined ? join(home, "backups", stamp()) : resolve(named);
    await backUp(home, folder);
    return `Backed up to ${folder}.`;
  }
  if (named === undefined) throw new Error("Name the backup folder: npm run restore -- FOLDER");
  const aside = await restore(home, resolve(named), stamp());
  return `Restored ${resolve(named)}.${aside === null ? "" : ` What was there before is in ${aside}.`}`;
};

const read = configFrom(process.env);
try {
  if (!read.ok) throw new Error(read.problem);
  console.log(await run(read.config.home));
} catch (error) {
  const problem = asStoreProblem(error, "The backup");
  console.error(problem?.message ?? (error instanceof Error ? error.message : "The backup failed."));
  process.exitCode = 1;
}
