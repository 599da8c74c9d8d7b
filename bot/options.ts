import { type ParseArgsConfig, parseArgs } from "node:util";

/** Not what the command was made for. */
const MISUSED = 2;

/** What a command was called with. Ends it with a sentence, and how it is used, where it was called with anything else. */
export const optionsOf = <T extends ParseArgsConfig>(
  config: T,
  usage: string,
): ReturnType<typeof parseArgs<T>> => {
  try {
    return parseArgs(config);
  } catch (error) {
    const [problem = ""] = (error instanceof Error ? error.message : "").split(". ");
    console.error(`${problem}. ${usage}`);
    process.exit(MISUSED);
  }
};
